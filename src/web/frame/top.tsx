import { Link, useLocation } from 'wouter';
import { changeDevice, useDevice } from '../data/device.js';
import { stateWords } from '../data/outbox/words.js';
import { useOutbox } from '../data/outbox.js';
import { useUnits } from '../data/queries.js';
import { useDrafts } from '../form/use-drafts.js';
import { BenchContact } from './bench-contact.js';

const pages = [
  { to: '/', name: 'Bench' },
  { to: '/desk', name: 'Reference desk' },
  { to: '/shop', name: 'Shop' },
] as const;

export function ShopNav() {
  const [here] = useLocation();
  const current = (to: string) => (to === '/' ? here === '/' : here.startsWith(to));
  return (
    <nav aria-label="Shop">
      {pages.map((p) => (
        <Link key={p.to} href={p.to} aria-current={current(p.to) ? 'page' : undefined}>
          {p.name}
        </Link>
      ))}
    </nav>
  );
}

/** What has reached the shop's store and what has not, in words. */
export function SavedState() {
  return (
    <>
      <BenchContact />
      <Begun />
      <Sent />
    </>
  );
}

/** Typed into a form and in no log yet: "all saved" must not be read as saying so of it. */
function Begun() {
  const begun = useDrafts().size;
  if (begun === 0) return null;
  return (
    <Link href="/shop/unsent" className="state waiting">
      {begun} begun<span className="only-wide">, not written down</span>
    </Link>
  );
}

function Sent() {
  const { look, words, more, isLink } = stateWords(useOutbox());
  const said = (
    <>
      {words}
      {more && <span className="only-wide">{more}</span>}
    </>
  );
  if (!isLink)
    return (
      <span className={`state ${look}`} role="status">
        {said}
      </span>
    );
  return (
    <span role="status" className="state-link">
      <Link href="/shop/unsent" className={`state ${look}`}>
        {said}
      </Link>
    </span>
  );
}

const nextTheme = { auto: 'night', night: 'day', day: 'auto' } as const;

export function DeviceSwitches() {
  const system = useUnits();
  const { theme } = useDevice();
  return (
    <>
      <button
        type="button"
        className="button quiet"
        onClick={() => changeDevice({ system: system === 'inch' ? 'metric' : 'inch' })}
        aria-label={`Units: ${system} first. Change`}
      >
        {system === 'inch' ? 'in · mm' : 'mm · in'}
      </button>
      <button
        type="button"
        className="button quiet"
        onClick={() => changeDevice({ theme: nextTheme[theme] })}
        aria-label={`Light: ${theme}. Change`}
      >
        {theme === 'auto' ? 'day · night' : theme}
      </button>
    </>
  );
}
