import { useState } from 'react';
import { CatalogError, problemWords } from '../../catalog/index.js';
import {
  givesWords,
  type ReadShopPack,
  readShopPack,
  type Shop,
  type ShopPack,
  shopCatalog,
  shopLog,
} from '../../job/index.js';
import { counted } from '../../phrase/index.js';
import { write } from '../data/outbox.js';
import { useForm } from '../form/use-form.js';
import { Button, useAct, Wrong } from '../parts/act.js';
import { TextField } from '../parts/field.js';
import { useArrival } from './arrival.js';
import { download } from './download.js';

/** Catalog packs of the shop's own: faults, checks, parts, figures that the program does not know. */
export function Packs({ shop }: { shop: Shop }) {
  const { packs } = shopCatalog(shop);
  useArrival('own-packs');
  return (
    <section className="section stack tight" aria-labelledby="own-packs">
      <h2 id="own-packs">Catalog packs of the shop’s own</h2>
      {packs.length === 0 && (
        <p className="empty">
          None yet. A pack is a text file that adds faults, checks, parts or figures to the catalog, or
          changes what stands there; the advice then reckons with it.
        </p>
      )}
      <ul className="lines">
        {packs.map((p) => (
          <PackLine key={p.pack} pack={p} />
        ))}
      </ul>
      <AddPack shop={shop} />
    </section>
  );
}

function PackLine({ pack: p }: { pack: ShopPack }) {
  const { wrong, act } = useAct();
  const left = p.problems.length > 0;
  return (
    <li>
      <div>
        <b>{p.head?.title ?? p.pack}</b>{' '}
        {left ? (
          <span className="verdict fail">left out</span>
        ) : (
          <span className="soft">{givesWords(p.gives)}</span>
        )}
        {left && (
          <>
            <p>It does not fit this version of the program. Everything else works without it.</p>
            <details>
              <summary>{counted(p.problems.length, 'reason')}</summary>
              <Reasons reasons={p.problems.map(problemWords)} />
            </details>
          </>
        )}
        <details>
          <summary>Read it</summary>
          <section
            className="scroll-x pack-text"
            // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
            tabIndex={0}
            aria-label={`Text of ${p.head?.title ?? p.pack}`}
          >
            <pre>
              <code>{p.text}</code>
            </pre>
          </section>
          <Button look="quiet" onClick={() => download(p.file, p.text, 'application/yaml')}>
            Keep it as a file
          </Button>
        </details>
        <Wrong words={wrong} />
      </div>
      <Button
        look="quiet"
        aria-label={`Remove the pack ${p.head?.title ?? p.pack}`}
        onClick={() => void act(() => write(shopLog, 'pack', { pack: p.pack, text: p.text, removed: true }))}
      >
        Remove
      </Button>
    </li>
  );
}

const mostReasons = 12;

function Reasons({ reasons }: { reasons: readonly string[] }) {
  return (
    <ul className="reasons">
      {reasons.slice(0, mostReasons).map((reason) => (
        <li key={reason}>{reason}</li>
      ))}
      {reasons.length > mostReasons && <li>and {reasons.length - mostReasons} more</li>}
    </ul>
  );
}

const example = `pack: { id: our-pumps, title: What pumps bring us }
faults:
  - id: pump-ran-dry
    name: Pump ran dry
    …`;

/** Read before it is kept: a pack that does not fit is refused with file, line and reason. */
function AddPack({ shop }: { shop: Shop }) {
  const [read, setRead] = useState<Look>();
  const form = useForm({
    job: shopLog,
    kind: 'pack',
    title: 'A catalog pack',
    fields: {
      $file: { as: 'drawn', label: 'File', begin: 'pasted text' },
      $text: { as: 'drawn', label: 'Its text', begin: '' },
    },
    lines: () => (read && 'body' in read ? [{ kind: 'pack', body: read.body }] : []),
    onDone: () => setRead(undefined),
  });
  const file = form.text('$file');
  const text = String(form.given.$text);
  const take = (given: { $file?: string; $text: string }) => {
    form.change(given);
    setRead(undefined);
  };
  return (
    <details>
      <summary>Add a pack</summary>
      <div className="stack tight">
        <PackFile onChosen={($file, $text) => take({ $file, $text })} />
        <TextField
          label={file === 'pasted text' ? 'or paste its text' : `Text of ${file}`}
          value={text}
          onChange={($text) => take({ $text })}
          long
          placeholder={example}
        />
        <WhatWasRead read={read} />
        <Wrong words={form.wrong} />
        <div className="row">
          {read && 'body' in read ? (
            <Button look="go" onClick={() => void form.keep()}>
              Keep this pack
            </Button>
          ) : (
            <Button disabled={text.trim() === ''} onClick={() => setRead(lookAt(shop, { file, text }))}>
              Read it through
            </Button>
          )}
        </div>
      </div>
    </details>
  );
}

type Look = ReadShopPack | { readonly refused: readonly string[] };

function lookAt(shop: Shop, given: { file: string; text: string }): Look {
  try {
    return readShopPack(shop, given);
  } catch (error) {
    if (!(error instanceof CatalogError)) throw error;
    return { refused: error.problems.map(problemWords) };
  }
}

function PackFile({ onChosen }: { onChosen: (file: string, text: string) => void }) {
  return (
    <label className="button">
      Choose a file
      <input
        className="hidden"
        type="file"
        accept=".yaml,.yml,text/yaml,application/yaml"
        onChange={(e) => {
          const file = e.target.files?.[0];
          e.target.value = '';
          void file?.text().then((text) => onChosen(file.name, text));
        }}
      />
    </label>
  );
}

function WhatWasRead({ read }: { read: Look | undefined }) {
  if (!read) return null;
  if ('refused' in read)
    return (
      <div className="wrong-box" role="alert">
        <b>This pack is not taken. Nothing was changed.</b>
        <Reasons reasons={read.refused} />
      </div>
    );
  return (
    <p role="status">
      “{read.title}” {givesWords(read.gives)}.
      {read.replaces && ' It takes the place of the pack of the same id.'}
    </p>
  );
}
