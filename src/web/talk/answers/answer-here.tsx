import { useDevice } from '../../data/device.js';
import { useStepKeys } from '../../parts/step-keys.js';
import type { Choice } from './choice.js';
import { SpokenAnswers } from './spoken-answers.js';
import { useAnswering } from './use-answering.js';

/** On a sheet: the question in hand can be answered by voice, where the person has switched that on. */
export function AnswerHere(question: { of: string; choices: readonly Choice[] }) {
  const { spokenAnswers } = useDevice();
  return spokenAnswers ? <Answering {...question} /> : null;
}

function Answering({ of, choices }: { of: string; choices: readonly Choice[] }) {
  const question = { key: of, choices };
  const voice = useAnswering(question);
  useStepKeys(undefined, undefined, voice.drop, undefined, voice);
  return <SpokenAnswers question={question} voice={voice} />;
}
