import type { Caution as CatalogCaution } from '../../catalog/index.js';

type Line = string | Pick<CatalogCaution, 'title' | 'words'>;

/** Stands before the step it belongs to. */
export function Caution({ lines, stop = false }: { lines: readonly Line[]; stop?: boolean }) {
  if (lines.length === 0) return null;
  return (
    <div className={stop ? 'caution stop' : 'caution'} role="note">
      <ul>
        {lines.map((l) => (
          <li key={typeof l === 'string' ? l : l.title}>
            {typeof l === 'string' ? l : <TitledLine {...l} />}
          </li>
        ))}
      </ul>
    </div>
  );
}

function TitledLine({ title, words }: Exclude<Line, string>) {
  return (
    <>
      <b>{title}.</b> {words}
    </>
  );
}
