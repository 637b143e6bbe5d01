import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { encode } from 'uqr';
import { api, type PairingLinks } from '../data/api.js';
import { queries } from '../data/queries.js';
import { Button, useAct, Wrong } from '../parts/act.js';

const devicesKey = ['devices'] as const;

/** Letting a phone in over the shop's network, and shutting it out again. */
export function Phones() {
  const { data } = useQuery({
    queryKey: devicesKey,
    queryFn: api.devices,
    // while a code is shown, the phone that uses it appears by itself
    refetchInterval: 5000,
  });
  if (!data) return null;
  return (
    <section className="section stack tight">
      <h2>Phones and tablets</h2>
      {data.here ? (
        <p>
          This device is paired as <b>{data.here.name}</b>. The bench computer lets others in and shuts them
          out.
        </p>
      ) : (
        <AtTheBench open={data.open} devices={data.devices} />
      )}
    </section>
  );
}

function AtTheBench({ open, devices }: Pick<Awaited<ReturnType<typeof api.devices>>, 'open' | 'devices'>) {
  const [shown, setShown] = useState<PairingLinks & { known: number }>();
  const { wrong, act } = useAct();
  const used = shown !== undefined && devices.length > shown.known;
  return (
    <>
      {open ? (
        <div>
          <Button
            onClick={() =>
              act(async () => setShown({ ...(await api.beginPairing()), known: devices.length }))
            }
          >
            Pair a phone
          </Button>
        </div>
      ) : (
        <p>
          Only this computer is let in. To use a phone or tablet in the shop’s own network, start Wristpin
          with <code>wristpin serve --lan</code> and pair it here.
        </p>
      )}
      {shown && !used && <Code shown={shown} />}
      <Wrong words={wrong} />
      {devices.length > 0 && (
        <ul className="lines">
          {devices.map(({ id, name, paired }) => (
            <li key={id}>
              <div>
                <b>{name}</b>
                <div className="soft">let in {new Date(paired).toLocaleString()}</div>
              </div>
              <Button
                onClick={() =>
                  act(async () => {
                    await api.shutOut(id);
                    await queries.invalidateQueries({ queryKey: devicesKey });
                  })
                }
              >
                Shut out<span className="hidden"> {name}</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function Code({ shown: { links, until } }: { shown: PairingLinks }) {
  const [link, ...others] = links;
  if (link === undefined)
    return <p>This computer is in no network just now. Join the shop’s network, then try again.</p>;
  return (
    <div className="pairing stack tight">
      <Scannable text={link} />
      <p>
        Scan it with the phone, in the same network as this computer. Or open{' '}
        <b className="address">{link}</b> there.
      </p>
      {others.length > 0 && <p className="soft">If it does not open: {others.join(' or ')}</p>}
      <p className="soft">
        Good for one device until{' '}
        {new Date(until).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}. What is sent is not
        encrypted: pair in a network that you trust.
      </p>
    </div>
  );
}

/** The address as a square code (ISO/IEC 18004), dark on light by night too: a camera wants it so. */
function Scannable({ text }: { text: string }) {
  const { data, size } = encode(text, { ecc: 'M', border: 4 });
  const squares = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return (
    <svg className="scannable" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={`Code for ${text}`}>
      <path d={squares.join('')} />
    </svg>
  );
}
