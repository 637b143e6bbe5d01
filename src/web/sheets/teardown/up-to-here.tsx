import { Button, Wrong } from '../../parts/act.js';

/** Pieces in their order; one touch takes all up to one of them. */
export function UpToHere(props: {
  way: 'Off' | 'Back';
  pieces: readonly {
    readonly id: string;
    readonly name: string;
    readonly bag?: string | undefined;
    readonly says?: string;
  }[];
  busy: boolean;
  wrong: string | undefined;
  /** a piece by its place in the list */
  onTake: (upTo: number) => void;
  onClose: () => void;
}) {
  const { way, pieces, busy, wrong, onTake, onClose } = props;
  return (
    <>
      <ol className="way">
        {pieces.map(({ id, name, bag, says }, i) => (
          <li key={id}>
            <span className="place">{bag}</span>
            <div>
              <b>{name}</b>
              {says && <div className="soft">{says}</div>}
            </div>
            <Button
              disabled={busy}
              aria-label={`${way === 'Off' ? 'Off' : 'Back on'} up to here: ${name}`}
              onClick={() => onTake(i)}
            >
              {way} to here
            </Button>
          </li>
        ))}
      </ol>
      <Wrong words={wrong} />
      <div className="row end">
        <Button onClick={onClose}>One at a time</Button>
      </div>
    </>
  );
}
