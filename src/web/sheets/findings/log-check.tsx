import type { ComponentProps } from 'react';
import { type Check, cautionsFor } from '../../../catalog/index.js';
import { saidOfAnyCheck } from '../../../diagnose/index.js';
import type { Answers, Body, Job } from '../../../job/index.js';
import { capital } from '../../../phrase/index.js';
import { useAnswers } from '../../data/answers.js';
import { Asked, FormBox } from '../../form/form.js';
import { type Form, useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { TakePicture } from '../../parts/picture.js';
import { AskedNow } from './asked-now.js';
import { Meant } from './meant.js';
import { spoiledBy } from './spoils.js';
import { TypedNumber } from './typed-number.js';
import { plainId } from './words.js';

interface LogProps {
  readonly job: Job;
  readonly check: Check | 'own' | undefined;
  readonly onClose: () => void;
}

/** One check: its cautions and what it would destroy come before its outcomes. */
export function LogCheck({ job, check, onClose }: LogProps) {
  return (
    <Dialog
      title={check === 'own' ? 'Something seen' : (check?.title ?? '')}
      open={check !== undefined}
      onClose={onClose}
    >
      <LogForm job={job} check={check === 'own' ? undefined : check} onClose={onClose} />
    </Dialog>
  );
}

type Logged = Omit<LogProps, 'check'> & { readonly check: Check | undefined };

function useSeen({ job, check, onClose }: Logged) {
  return useForm({
    job: job.id,
    kind: 'observation',
    handle: check?.id,
    title: check?.title ?? 'Something seen',
    fields: {
      title: {
        as: 'text',
        label: 'What',
        hint: 'exhaust side of the shroud',
        when: () => !check,
        need: 'Say what you looked at.',
      },
      conditions: {
        as: 'text',
        label: 'Conditions',
        hint: 'cold, choke closed, six pulls',
        help: 'A result without its conditions cannot be compared later.',
      },
      words: { as: 'text', label: 'In your words' },
      doubtful: { as: 'tick', label: 'Doubtful: I would want to see it again' },
      $several: { as: 'tick', label: 'More than one of these', when: () => check?.several === true },
      outcomes: {
        as: 'many',
        label: 'What was seen',
        choices: (check?.outcomes ?? []).map((o) => ({ id: o.words, label: o.words })),
        when: ({ $several }) => $several === true,
      },
    },
    also: ({ outcomes = [] }) => ({ outcomes, ...(check && { check: check.id, title: check.title }) }),
    onDone: onClose,
  });
}

function LogForm(props: Logged) {
  const { job, check, onClose } = props;
  const answers = useAnswers();
  const form = useSeen(props);
  return (
    <>
      <Caution lines={before(answers, check)} />
      {check && (
        <>
          <AskedNow job={job} check={check} />
          <TypedNumber job={job} check={check} doubtful={form.given.doubtful === true} onLogged={onClose} />
        </>
      )}
      <SeenForm job={job} check={check} form={form} onClose={onClose} />
    </>
  );
}

function SeenForm({ job, check, form, onClose }: Logged & { form: Form<Body<'observation'>> }) {
  const oneTap = check !== undefined && form.given.$several !== true;
  return (
    <FormBox form={form} {...(!oneTap && { keep: 'Log it' })} more={<Button onClick={onClose}>Close</Button>}>
      {check?.note && <p className="soft">{check.note}</p>}
      {oneTap && (
        <div className="stack tight">
          <h3>Tap what was seen</h3>
          <div className="row">
            {check.outcomes.map((o) => (
              <Button key={o.id} onClick={() => void form.keep({ also: { outcomes: [o.words] } })}>
                {o.words}
              </Button>
            ))}
          </div>
        </div>
      )}
      <Asked form={form} />
      {!check && (
        <Meant
          job={job}
          words={`${form.text('title')} ${form.text('words')}`}
          onTaken={() => {
            form.giveUp();
            onClose();
          }}
        />
      )}
      {check && (
        <div className="row">
          {saidOfAnyCheck.map(plainId).map((outcome) => (
            <Button
              key={outcome}
              look="quiet"
              onClick={() => void form.keep({ also: { outcomes: [outcome] } })}
            >
              {capital(outcome)}
            </Button>
          ))}
        </div>
      )}
      <TakePicture
        job={job.id}
        stage="findings"
        when="before"
        caption={check?.title ?? form.text('title')}
        label="Photograph it"
      />
    </FormBox>
  );
}

/** Cautions of the check, and what it spoils for checks not made yet. */
function before(
  { catalog, job, engine }: Answers,
  check: Check | undefined,
): ComponentProps<typeof Caution>['lines'] {
  if (!check) return [];
  const spoils = spoiledBy(catalog, job, check).map((c) => c.title);
  const why = engine.barred(check);
  return [
    ...(why === undefined ? [] : [`Not now: ${why}.`]),
    ...cautionsFor(catalog, { check: check.id }),
    ...(spoils.length > 0 ? [`Look first at what this spoils: ${spoils.join('; ')}.`] : []),
  ];
}
