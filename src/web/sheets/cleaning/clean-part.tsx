import { useEffect, useRef } from 'react';
import type { Catalog } from '../../../catalog/index.js';
import { type AgentAnswer, type Answers, type Job, waysToClean } from '../../../job/index.js';
import { useAnswers, useCatalog } from '../../data/answers.js';
import { Asked, FormBox, Resumed } from '../../form/form.js';
import { useForm } from '../../form/use-form.js';
import { Button } from '../../parts/act.js';
import { Caution } from '../../parts/caution.js';
import { Dialog } from '../../parts/dialog.js';
import { ManyChoices } from '../../parts/field.js';
import { componentsOf, handleOf } from '../components.js';

/** Part, material, cleaner; what it does to the part is said before anything is wet. */
export function CleanPart(props: { job: Job; open: boolean; onClose: () => void }) {
  return (
    <Dialog title="Clean a part" open={props.open} onClose={props.onClose}>
      <Ask {...props} />
    </Dialog>
  );
}

/** Part, what is on it, materials and cleaner; a change of one takes back what hung on it. */
function useChoice(job: Job) {
  const door = useAnswers();
  const { catalog } = door;
  const waysFor = (component: unknown) => waysToClean(catalog, (component as string) || undefined);
  /** a way says what such a part is made of; another one wants another cleaner */
  const chooseWay = (id: string | undefined) => ({
    $way: id ?? '',
    materials: catalog.cleanings.find((c) => c.id === id)?.materials ?? [],
    agent: undefined,
  });
  const form = useForm({
    job: job.id,
    kind: 'cleaning',
    handle: 'what to clean',
    title: 'Clean a part',
    fields: {
      component: {
        as: 'select',
        label: 'Which part',
        choices: partChoices(door),
        none: 'something else',
        sets: (component) => {
          const own = waysFor(component);
          return chooseWay(own.length === 1 ? own[0]!.id : undefined);
        },
      },
      $way: {
        as: 'select',
        label: 'What is on it',
        choices: ({ component }) => waysFor(component).map((w) => ({ id: w.id, label: w.part })),
        when: ({ component }) => waysFor(component).length > 1,
        sets: (id) => chooseWay(id || undefined),
      },
      materials: { as: 'drawn', label: 'It is made of', begin: [], sets: () => ({ agent: undefined }) },
      agent: { as: 'drawn', label: 'What with' },
    },
  });
  return { door, form, waysFor };
}

function Ask({ job, onClose }: { job: Job; onClose: () => void }) {
  const { door, form, waysFor } = useChoice(job);
  const { catalog } = door;
  const component = form.text('component');
  const materials = form.list('materials');
  const way = waysFor(component).find(({ id }) => id === form.given.$way);
  const answers =
    materials.length === 0
      ? []
      : door.cleaningWith({
          materials,
          ...(component && { component }),
          ...(way && { way: way.id }),
        });
  const chosen = answers.find((a) => a.agent.id === form.given.agent);
  const chooseAgent = (id: string) => form.set('agent', id);
  const done = () => {
    form.giveUp();
    onClose();
  };
  return (
    <>
      <Resumed form={form} />
      <Asked form={form} />
      <Materials
        usual={way?.materials ?? []}
        value={materials}
        onChange={(next) => form.set('materials', next)}
      />
      {way && (
        <p className="soft">
          Usual: {way.use}. Then {way.after}.
        </p>
      )}
      {answers.length > 0 && <Agents answers={answers} value={chosen?.agent.id} onChange={chooseAgent} />}
      {chosen && (
        <Chosen
          key={`${chosen.agent.id} ${materials.join(' ')}`}
          job={job}
          asked={{ component, materials, title: titleOf(catalog, job, component, way?.part) }}
          answer={chosen}
          others={answers.filter((a) => a.verdict === 'allowed').slice(0, 3)}
          onOther={chooseAgent}
          onDone={done}
        />
      )}
      <div className="row end">
        <Button onClick={done}>Leave it</Button>
      </div>
    </>
  );
}

/** What such a part is made of as a rule, and behind a tap whatever else is on it. */
function Materials(props: {
  usual: readonly string[];
  value: readonly string[];
  onChange: (materials: string[]) => void;
}) {
  const catalog = useCatalog();
  const { usual, value, onChange } = props;
  const all = catalog.materials.map((m) => ({ id: m.id, label: m.name.split(':')[0]! }));
  const rest = all.filter(({ id }) => !usual.includes(id));
  const help = 'Everything on it that the cleaner will touch: seals, plating and paint too.';
  if (usual.length === 0)
    return <ManyChoices label="It is made of" choices={all} value={value} onChange={onChange} help={help} />;
  return (
    <>
      <ManyChoices
        label="It is made of"
        choices={all.filter(({ id }) => usual.includes(id))}
        value={value}
        onChange={onChange}
      />
      <details open={value.some((id) => !usual.includes(id))}>
        <summary>Something else on it too?</summary>
        <ManyChoices label="Also" choices={rest} value={value} onChange={onChange} help={help} />
      </details>
    </>
  );
}

/** What is off lies in front of one and comes first. */
function partChoices({ catalog, job, tally }: Answers): { id: string; label: string }[] {
  const off = new Set(tally.notPutBack.flatMap((s) => s.component ?? []));
  const components = componentsOf(catalog, job);
  return [...components.filter(({ id }) => off.has(id)), ...components.filter(({ id }) => !off.has(id))].map(
    ({ id, name }) => ({ id, label: off.has(id) ? `${name} (off)` : name }),
  );
}

function titleOf(catalog: Catalog, job: Job, component: string, part: string | undefined): string {
  return componentsOf(catalog, job).find(({ id }) => id === component)?.name ?? part ?? 'A part';
}

const verdictWords = {
  allowed: { look: 'verdict pass', word: 'allowed' },
  'with-care': { look: 'verdict cannot-decide', word: 'with care' },
  never: { look: 'verdict fail', word: 'never' },
} as const;

function Agents(props: {
  answers: readonly AgentAnswer[];
  value: string | undefined;
  onChange: (id: string) => void;
}) {
  const may = props.answers.filter((a) => a.verdict !== 'never');
  const never = props.answers.filter((a) => a.verdict === 'never');
  const lines = (list: readonly AgentAnswer[]) =>
    list.map(({ agent, verdict }) => (
      <label className="agent" key={agent.id}>
        <input
          type="radio"
          name="agent"
          checked={props.value === agent.id}
          onChange={() => props.onChange(agent.id)}
        />
        <span>{agent.name}</span>
        <span className={verdictWords[verdict].look}>{verdictWords[verdict].word}</span>
      </label>
    ));
  return (
    <fieldset className="field agents">
      <legend className="label">What with</legend>
      {lines(may)}
      {never.length > 0 && (
        <details open={never.some((a) => a.agent.id === props.value)}>
          <summary>Never on this ({never.length})</summary>
          {lines(never)}
        </details>
      )}
      <div className="help">What is not listed nobody has judged on it.</div>
    </fieldset>
  );
}

function Chosen(props: {
  job: Job;
  asked: { component: string; materials: readonly string[]; title: string };
  answer: AgentAnswer;
  others: readonly AgentAnswer[];
  onOther: (id: string) => void;
  onDone: () => void;
}) {
  const { answer, others } = props;
  // the list of cleaners is longer than a phone: what is said of the one chosen must not stay below its edge
  const here = useRef<HTMLElement>(null);
  useEffect(() => {
    here.current?.scrollIntoView({ block: 'center' });
  }, []);
  if (answer.verdict === 'never')
    return (
      <section className="stack tight" aria-label="Never" ref={here}>
        <Caution
          stop
          lines={[
            ...answer.reasons.map((reason) => `${reason}.`),
            ...(answer.hazards.length > 0 ? [`Hazard: ${answer.hazards.join(', ')}.`] : []),
          ]}
        />
        {others.length > 0 && (
          <>
            <p>Take instead:</p>
            <div className="choices">
              {others.map(({ agent }) => (
                <Button key={agent.id} onClick={() => props.onOther(agent.id)}>
                  {agent.name.split(':')[0]}
                </Button>
              ))}
            </div>
          </>
        )}
      </section>
    );
  return (
    <section className="stack tight" aria-label="Before it is started" ref={here}>
      <Start {...props} />
    </section>
  );
}

const wastes: Readonly<Record<string, string>> = { none: '', solid: 'sweep it up, do not blow it' };

function Start(props: Parameters<typeof Chosen>[0]) {
  const { job, asked, answer, onDone } = props;
  const waste =
    wastes[answer.agent.waste] ?? `its waste goes to the ${answer.agent.waste}, and to nothing else`;
  const form = useForm({
    job: job.id,
    kind: 'cleaning',
    handle: `${asked.title} ${answer.agent.id}`,
    title: `${asked.title}: cleaning`,
    fields: {
      title: { as: 'text', label: 'What it is', begin: asked.title, need: 'Say what it is.' },
      soakMinutes: {
        as: 'number',
        label: 'Soak, minutes',
        begin: minutesText(answer.soakMinutes),
        help: 'Look after that; give it more if it needs more.',
      },
      dryMinutes: { as: 'number', label: 'Dry, minutes', begin: minutesText(answer.dryMinutes) },
    },
    also: ({ title, soakMinutes, dryMinutes }) => ({
      cleaning: handleOf(`${title} ${answer.agent.id} ${job.cleanings.size + 1}`),
      materials: [...asked.materials],
      agent: answer.agent.id,
      state: soakMinutes ? 'soaking' : dryMinutes ? 'drying' : 'done',
      ...(asked.component && { component: asked.component }),
    }),
    onDone,
  });
  return (
    <FormBox
      form={form}
      keep={(form.body?.soakMinutes ?? 0) > 0 ? 'Put it in now' : 'Cleaned now'}
      more={
        <Button disabled={form.busy} onClick={() => void form.keep({ also: { state: 'planned' } })}>
          Plan it
        </Button>
      }
      before={
        <>
          <ul className="plain">
            {answer.reasons.map((reason) => (
              <li key={reason}>
                <span className={answer.verdict === 'with-care' ? 'verdict cannot-decide wraps' : 'soft'}>
                  {reason}
                </span>
              </li>
            ))}
          </ul>
          <Caution
            lines={[
              ...(answer.hazards.length > 0 ? [`Hazard: ${answer.hazards.join(', ')}.`] : []),
              ...answer.cautions,
            ]}
          />
          {waste && <p className="soft">Afterwards {waste}.</p>}
        </>
      }
    />
  );
}

const minutesText = (minutes: number | undefined) => (minutes === undefined ? '' : String(minutes));
