import { useState } from 'react';
import type { AskedGate, Coverage, Job } from '../../../job/index.js';
import { write } from '../../data/outbox.js';
import { Button, useAct, Wrong } from '../../parts/act.js';
import { TextField } from '../../parts/field.js';
import { ActPage } from '../teardown/act-page.js';
import { TickRow } from '../teardown/tick-row.js';
import { ViewRows } from '../teardown/view-rows.js';

/** A gate: not on before each of its demands is proved. What was found is logged either way. */
export function GateAct(props: {
  job: Job;
  asked: AskedGate;
  where: string;
  coverage: Coverage;
  onDone: () => void;
  onLeave: () => void;
}) {
  const { job, asked, onDone, onLeave } = props;
  const { gate } = asked;
  const [proved, setProved] = useState<readonly string[]>(asked.answer?.checked ?? []);
  const [words, setWords] = useState('');
  const { wrong, busy, act } = useAct();
  const open = gate.demands.filter((d) => !proved.includes(d));
  const say = async (state: 'done' | 'planned') => {
    const done = await act(() =>
      write(job.id, 'step', {
        step: asked.step,
        stage: 'assembly',
        title: `${gate.name}: ${state === 'done' ? 'proved' : 'not so yet'}`,
        state,
        checked: [...proved],
        words: words.trim() || undefined,
      }),
    );
    if (done) (state === 'done' ? onDone : onLeave)();
  };
  return (
    <ActPage
      job={job}
      where={props.where}
      title={`Not on before this is so: ${gate.name.toLowerCase()}`}
      spoken={`Before you go on. ${gate.demands.join('. ')}`}
      onLeave={onLeave}
      other={
        <Button look="danger" disabled={busy} onClick={() => void say('planned')}>
          It is not so
        </Button>
      }
      go={{
        label: open.length > 0 ? `${open.length} still to prove` : 'Proved · next',
        act: () => void say('done'),
        disabled: busy || open.length > 0,
      }}
      side={
        <>
          <ViewRows
            job={job}
            views={props.coverage.wanted.filter((v) => v.of === gate.id)}
            stage="assembly"
            when="after"
          />
          <TextField label="Note" value={words} onChange={setWords} placeholder="what was felt, how much" />
          <Wrong words={wrong} />
        </>
      }
    >
      {gate.demands.map((demand) => (
        <TickRow
          key={demand}
          checked={proved.includes(demand)}
          onChange={(on) => setProved(on ? [...proved, demand] : proved.filter((d) => d !== demand))}
        >
          {demand}
        </TickRow>
      ))}
    </ActPage>
  );
}
