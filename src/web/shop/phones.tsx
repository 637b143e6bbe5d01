import { useQuery } from '@tanstack/react-query';
import { Fragment, useState } from 'react';
import { encode } from 'uqr';
import { api, type PairingLinks } from '../data/api.js';
import { queries } from '../data/queries.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { Choices } from '../parts/field.js';

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
        <>
          <p>
            This device is paired as <b>{data.here.name}</b>. The bench computer lets others in and shuts them
            out.
          </p>
          {data.trust && (
            <p>
              <a href="/trust/">Trust this bench</a>: opens without a network, stays awake, rings, listens.
            </p>
          )}
        </>
      ) : (
        <AtTheBench {...data} />
      )}
    </section>
  );
}

function AtTheBench({ open, devices, trust }: Awaited<ReturnType<typeof api.devices>>) {
  const [shown, setShown] = useState<PairingLinks & { known: string }>();
  const { wrong, act } = useAct();
  const used = shown !== undefined && newest(devices) !== shown.known;
  return (
    <>
      {open ? (
        <div>
          <Button
            onClick={() =>
              act(async () => setShown({ ...(await api.beginPairing()), known: newest(devices) }))
            }
          >
            Pair a phone
          </Button>
        </div>
      ) : (
        <p>
          Only this computer is let in. To use a phone or tablet in the shop’s own network, start Wristpin
          with <code>wristpin serve --lan --secure</code> and pair it here.
        </p>
      )}
      {shown && !used && (
        <Code
          shown={shown}
          encrypted={trust !== undefined}
          onClose={() =>
            act(async () => {
              await api.withdrawCode();
              setShown(undefined);
            })
          }
        />
      )}
      <Wrong words={wrong} />
      {devices.length > 0 && <Paired devices={devices} act={act} />}
      {trust && <Authority fingerprint={trust.fingerprint} />}
    </>
  );
}

/** What a phone that trusts the bench is to be shown the same as. */
function Authority({ fingerprint }: { fingerprint: string }) {
  return (
    <div>
      <p>
        A paired phone that trusts the shop’s own authority opens Wristpin without a network, keeps its screen
        awake, rings and listens: on the phone open <b>/trust/</b> at the bench’s address and follow the
        pictures. It shows this fingerprint there:
      </p>
      <code>
        {fingerprint.split(':').map((pair, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a pair may stand there twice, and none ever moves
          <Fragment key={i}>
            {i > 0 && ':'}
            <wbr />
            {pair}
          </Fragment>
        ))}
      </code>
    </div>
  );
}

/** Pairing a device anew leaves as many as there were. */
const newest = (devices: readonly { readonly id: string }[]) => devices.at(-1)?.id ?? '';

function Paired(props: {
  devices: Awaited<ReturnType<typeof api.devices>>['devices'];
  act: ReturnType<typeof useAct>['act'];
}) {
  return (
    <ul className="lines">
      {props.devices.map(({ id, name, paired, seen }) => (
        <li key={id}>
          <div>
            <b>{name}</b>
            <div className="soft">
              let in {atClock(paired)}, {seen === undefined ? 'not seen since' : `last seen ${atClock(seen)}`}
            </div>
          </div>
          <Button
            onClick={() =>
              props.act(async () => {
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
  );
}

function atClock(iso: string): string {
  const at = new Date(iso);
  const isToday = at.toDateString() === new Date().toDateString();
  return isToday
    ? `today, ${at.toLocaleTimeString([], { timeStyle: 'short' })}`
    : at.toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' });
}

/** One code under each name and address of the bench: which of them a phone finds depends on its network. */
function Code(props: { shown: PairingLinks; encrypted: boolean; onClose: () => void }) {
  const { links, until } = props.shown;
  const [chosen, setChosen] = useState(0);
  const link = links[chosen];
  if (link === undefined)
    return <p>This computer is in no network just now. Join the shop’s network, then try again.</p>;
  return (
    <div className="pairing stack tight">
      {links.length > 1 && (
        <Choices
          label="If the phone does not find it, take another"
          value={String(chosen)}
          onChange={(id) => setChosen(Number(id))}
          choices={links.map((each, i) => ({ id: String(i), label: new URL(each).hostname }))}
        />
      )}
      <Scannable text={link} />
      <p>
        Scan it with the phone, in the same network as this computer. Or open{' '}
        <b className="address">{link}</b> there.
      </p>
      <p className="soft">
        Good for one device until{' '}
        {new Date(until).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}
        {props.encrypted
          ? '. The page that it opens says how the phone comes to trust this bench.'
          : '. What is sent is not encrypted: pair in a network that you trust.'}
      </p>
      <div>
        <Button look="quiet" onClick={props.onClose}>
          Withdraw the code
        </Button>
      </div>
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
