import { useState } from 'react';
import { Link } from 'wouter';
import type { Answers } from '../../job/index.js';
import { Page } from '../frame/page.js';
import { Choices } from '../parts/field.js';
import { BoltsOnMat } from './bolts-on-mat.js';
import { MatPrint } from './mat-print.js';
import { PlateOnMat } from './plate-on-mat.js';
import { TwoOnMat } from './two-on-mat.js';

const kinds = [
  { id: 'plate', label: 'A gasket, cover or face' },
  { id: 'bolts', label: 'Bolts' },
  { id: 'two', label: 'Two that look alike' },
] as const;
type Kind = (typeof kinds)[number]['id'];

/** Parts measured from a photograph on the printed mat. */
export function OnTheMat({ answers, about }: { answers: Answers; about: string | undefined }) {
  const asked = kinds.find(({ id }) => id === new URLSearchParams(location.search).get('what'));
  const [kind, setKind] = useState<Kind>(asked?.id ?? 'plate');
  const { job } = answers;
  return (
    <Page title="Measured on the mat">
      <p className="row">
        <Link href={`/job/${job.id}/measure`} className="button quiet">
          Back to tag {job.tag}
        </Link>
      </p>
      <MatPrint />
      <Choices<Kind> label="What lies on it" value={kind} onChange={setKind} choices={kinds} />
      {kind === 'plate' && <PlateOnMat job={job} about={about} />}
      {kind === 'bolts' && <BoltsOnMat job={job} about={about} />}
      {kind === 'two' && <TwoOnMat job={job} about={about} />}
    </Page>
  );
}
