import { Link } from 'wouter';
import type { From, Job } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { asBody } from '../../form/as-body.js';
import { FormBox } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { PictureGrid, TakePicture } from '../../parts/picture.js';

interface ArrivalProps {
  readonly job: Job;
  readonly part: From<'part'> | undefined;
  readonly onClose: () => void;
  readonly onMismatch: (part: string) => void;
}

/** A part has come: laid beside the old one before anybody believes that it fits. */
export function ArrivalDialog({ job, part, onClose, onMismatch }: ArrivalProps) {
  return (
    <Dialog title={part ? `${part.name} is here` : ''} open={part !== undefined} onClose={onClose}>
      {part && <Arrival key={part.entry} job={job} part={part} onClose={onClose} onMismatch={onMismatch} />}
    </Dialog>
  );
}

const blames = [
  { id: 'sent-wrong', label: 'The wrong one was sent' },
  { id: 'no-fit', label: 'This offer does not fit the engine' },
] as const;

function Arrival({ job, part, onClose, onMismatch }: ArrivalProps & { part: From<'part'> }) {
  const form = useForm({
    job: job.id,
    kind: 'part',
    handle: `${part.part} here`,
    title: `${part.name} is here`,
    fields: {
      $differs: { as: 'drawn', label: 'It does not match' },
    },
    also: { ...asBody(part), state: 'arrived' },
    onDone: onClose,
  });
  const about = <NewBesideOld job={job} part={part} />;
  if (form.given.$differs === true)
    return (
      <>
        {about}
        <Mismatch
          job={job}
          part={part}
          onBack={() => form.set('$differs', undefined)}
          onDone={() => {
            form.giveUp();
            onMismatch(part.part);
          }}
        />
      </>
    );
  return (
    <FormBox
      form={form}
      before={about}
      keep="It matches"
      more={<Button onClick={() => form.set('$differs', true)}>It does not match</Button>}
    />
  );
}

/** What it is easily mistaken for, the pictures of the old one, and one of both. */
function NewBesideOld({ job, part }: { job: Job; part: From<'part'> }) {
  const looks = useAnswers().bill.find((l) => l.listed === part.part)?.lookAlikes ?? [];
  const pictures = job.photographs.filter(
    (p) => p.about === part.part || (part.component !== undefined && p.about?.startsWith(part.component)),
  );
  return (
    <>
      <p>
        {part.consumable
          ? 'The right grade and enough of it?'
          : 'Lay it beside the old one: same outline, same holes and slots, same thickness and length?'}
      </p>
      <Caution lines={looks.map(({ name, tell }) => ({ title: name, words: tell }))} />
      <PictureGrid photographs={pictures} />
      {!part.consumable && (
        <Link href={`/job/${job.id}/on-the-mat/${part.part}?what=two`} className="button">
          Compare both on the mat
        </Link>
      )}
      <TakePicture
        job={job.id}
        stage="parts"
        when="after"
        about={part.part}
        caption={`${part.name}: new beside old`}
        label="Photograph new beside old"
      />
    </>
  );
}

/** Said with what differs; the offer that brought it may be struck from those that are bought again. */
function Mismatch(props: { job: Job; part: From<'part'>; onBack: () => void; onDone: () => void }) {
  const { job, part } = props;
  const offer = part.offer === undefined ? undefined : job.offers.get(part.offer);
  const form = useForm({
    job: job.id,
    kind: 'part',
    handle: `${part.part} mismatch`,
    title: `${part.name} does not match`,
    fields: {
      words: {
        as: 'text',
        label: 'What differs',
        hint: 'one hole too few, 2 mm thicker …',
        need: 'Say what differs.',
      },
      $blame: {
        as: 'choice',
        label: 'How it came about',
        choices: blames,
        begin: 'no-fit',
        when: () => offer !== undefined,
        help: ({ $blame }) =>
          $blame === 'no-fit'
            ? `“${offer?.name}” is not bought again for this job.`
            : 'The same offer may be ordered again.',
      },
    },
    also: { ...withoutWords(part), state: 'mismatch' },
    lines: (body, { $blame }) => [
      { kind: 'part', body },
      ...(offer && $blame === 'no-fit'
        ? [{ kind: 'offer' as const, body: { ...asBody(offer), withdrawn: true } }]
        : []),
    ],
    onDone: props.onDone,
  });
  return <FormBox form={form} keep="Log the mismatch" leave="Look again" onLeave={props.onBack} />;
}

function withoutWords(part: From<'part'>) {
  const { words: _words, ...body } = asBody(part);
  return body;
}
