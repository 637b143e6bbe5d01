import {
  asPrinted,
  type Catalog,
  doubtOfSeen,
  readSpecLines,
  type SpecLine,
} from '../../../catalog/index.js';
import type { Job } from '../../../job/index.js';
import type { PageLine } from '../../../sight/index.js';
import { useCatalog } from '../../data/answers.js';
import type { KeptPage } from '../../page/photograph-page.js';
import { Cut } from '../../parts/cut.js';
import { TextField } from '../../parts/field.js';
import { useLocalAddress } from '../../parts/picture.js';
import { SpecLineRow } from './spec-line-row.js';

/** Each line of the photographed sheet beside its own cut of the picture, to be looked at and confirmed one by one. */
export function SeenLines(props: {
  job: Job;
  sheet: KeptPage;
  page: string;
  onChange: (sheet: KeptPage) => void;
}) {
  const { sheet, onChange } = props;
  const catalog = useCatalog();
  const address = useLocalAddress(sheet.picture.sha256);
  const rows = sheet.lines.map((line, i) => ({
    i,
    line,
    read: readSpecLines(catalog, asPrinted(line.text)),
  }));
  const isOfUse = ({ spec, candidates, line }: SpecLine) =>
    spec !== undefined || (candidates.length > 0 && /\d/.test(line));
  const matched = rows.filter(({ read }) => read.some(isOfUse));
  const others = rows.filter((row) => !matched.includes(row));
  const row = ({ i, line, read }: (typeof rows)[number]) => (
    <SeenRow
      key={i}
      {...props}
      line={line}
      read={read}
      address={address}
      onText={(text) => onChange({ ...sheet, lines: sheet.lines.with(i, { ...line, text, words: [] }) })}
    />
  );
  return (
    <>
      <ul className="lines">{matched.map(row)}</ul>
      {others.length > 0 && (
        <details>
          <summary>
            {others.length === 1 ? '1 line says nothing known' : `${others.length} lines say nothing known`}
          </summary>
          <ul className="lines">{others.map(row)}</ul>
        </details>
      )}
    </>
  );
}

function SeenRow(props: {
  job: Job;
  sheet: KeptPage;
  page: string;
  line: PageLine;
  read: readonly SpecLine[];
  address: string | undefined;
  onText: (text: string) => void;
}) {
  const { job, sheet, page, line, read, address, onText } = props;
  const catalog = useCatalog();
  const { x, y, width, height } = line.box;
  const cut = { picture: sheet.picture.sha256, x, y, width, height };
  const said = (
    <>
      <Cut cut={cut} of={sheet.picture} alt={`the line as photographed: ${line.text}`} address={address} />
      <TextField label="Read as" value={asPrinted(line.text)} onChange={onText} />
    </>
  );
  return read.map((each, k) => (
    <SpecLineRow
      // biome-ignore lint/suspicious/noArrayIndexKey: a line that is being typed stays the same row
      key={k}
      job={job}
      line={each}
      page={page}
      cut={cut}
      doubt={doubtIn(catalog, each, line)}
      said={k === 0 ? said : undefined}
    />
  ));
}

const doubtIn = (catalog: Catalog, each: SpecLine, line: PageLine) => doubtOfSeen(catalog, each, line.words);
