import { useState } from 'react';
import type { Check } from '../../../catalog/index.js';
import { questionsAt } from '../../../diagnose/index.js';
import { numberAloud, numbersNear, steps } from '../../../hear/index.js';
import { type Answers, type Job, lookedFor, valueAsked } from '../../../job/index.js';
import { useAnswers } from '../../data/answers.js';
import { writeAll } from '../../data/outbox.js';
import { AnswerHere } from '../../talk/answers/answer-here.js';
import type { Choice } from '../../talk/answers/choice.js';
import { phrases } from '../../talk/answers/phrases.js';
import { asWritten, linesOf, meaning, said, useReadersUnit } from './typed-number.js';

interface Asked {
  readonly job: Job;
  readonly check: Check;
  readonly doubtful: boolean;
  /** its outcomes, as they stand on the buttons */
  readonly seen: readonly Choice[];
  /** what can be said of any check */
  readonly ofAny: readonly Choice[];
  readonly told: Choice;
  readonly act: (work: () => Promise<unknown>) => Promise<boolean>;
  readonly onLogged?: (() => void) | undefined;
}

/** The check in hand by voice: its outcomes, or, once "take a number" is said, a few numbers near the one looked for. */
export function AnswerByVoice(props: Asked) {
  const { job, check, seen, ofAny, told } = props;
  const [page, turnTo] = useState<number>();
  const numbersAt = useNumbers(props);
  const key = `${check.id} ${job.log.length}`;
  const turning = (say: string, label: string, to: number | undefined): Choice => ({
    ...{ say, label, writes: false, act: () => turnTo(to) },
  });
  if (page === undefined || numbersAt(page).length === 0) {
    const number = numbersAt(0).length > 0 ? [turning(phrases.number, 'A number near it', 0)] : [];
    return <AnswerHere of={key} choices={[...seen, ...number, ...ofAny, told]} />;
  }
  const paged = [
    ...(numbersAt(page + 1).length > 0 ? [turning(phrases.higher, 'Higher numbers', page + 1)] : []),
    ...(numbersAt(page - 1).length > 0 ? [turning(phrases.lower, 'Lower numbers', page - 1)] : []),
  ];
  return (
    <AnswerHere
      of={`${key} ${page}`}
      choices={[...numbersAt(page), ...paged, turning(phrases.outcomes, 'Back to the outcomes', undefined)]}
    />
  );
}

/** The numbers of one page, each as it is said, digit by digit; none where the check takes none that can be said. */
function useNumbers({ job, check, doubtful, act, onLogged }: Asked): (page: number) => Choice[] {
  const answers = useAnswers();
  const asked = valueAsked(answers, check);
  const unit = useReadersUnit(asked ?? { unit: '' });
  const step = steps[unit];
  const near = asked && step !== undefined ? lookedFor(answers, check, { ...asked, unit }) : undefined;
  if (!asked || !near || step === undefined) return () => [];
  const choiceOf = (number: string): Choice => {
    const value = asWritten(number, asked, unit);
    const body = { ...said(answers, check, value), ...(doubtful && { doubtful }) };
    const log = async () => {
      if (await act(() => writeAll(job.id, linesOf(answers, check, body)))) onLogged?.();
    };
    const label = `${value}. ${meaning(body.outcomes[0], isOpen(answers, check))}`;
    return { say: numberAloud(number), label, writes: true, act: log };
  };
  return (page) => numbersNear({ step, ...near }, near.near, page).map(choiceOf);
}

const isOpen = ({ catalog, engine }: Answers, check: Check): boolean =>
  questionsAt(catalog, engine, check).length > 0;
