import {
  byFault,
  byFunction,
  type ExactInference,
  type Inference,
  infer as inferNetwork,
  readNetwork,
} from '../../infer/index.js';
import { type Command, flag } from '../command.js';
import { table } from '../help.js';
import { readJson } from './in-json.js';
import { inShape } from './in-shape.js';

/** Two faults, the spark that one of them takes away, and a sign of both; the sign was seen. */
const example = {
  faults: [
    { id: 'stale fuel', prior: 0.6 },
    { id: 'coil dead', prior: 0.1 },
  ],
  functions: [
    {
      id: 'spark',
      states: ['good', 'weak', 'none'],
      causes: [{ fault: 'coil dead', outcome: [0.05, 0.15, 0.8] }],
    },
  ],
  signs: [
    {
      id: 'does it fire',
      outcomes: ['fires', 'does not fire'],
      leak: [0.95, 0.05],
      causes: [
        { fault: 'stale fuel', outcome: [0.4, 0.6] },
        {
          function: 'spark',
          outcome: [
            [0.7, 0.3],
            [0.01, 0.99],
          ],
        },
      ],
    },
  ],
  seen: [{ sign: 'does it fire', outcome: 'does not fire' }],
};

export const infer: Command = {
  usage: 'wristpin infer NETWORK.json [--json]',
  options: {
    json: {
      type: 'boolean',
      help: 'print {posterior, evidence} and, with functions, {functions} as JSON, in full digits',
    },
  },
  examples: ['wristpin infer pump-faults.json --json'],
  file: example,
  takes: { least: 1, most: 1 },
  run: async (call, around) => {
    const [file] = call.positionals;
    const given = await readJson(file!);
    const answer = inShape(file!, example, () => inferNetwork(readNetwork(given)));
    if (answer.kind === 'bounded') around.err(boundedNote(answer.wanted));
    around.out(flag(call, 'json') ? JSON.stringify(asJson(answer), null, 2) : asText(answer));
  },
};

function asJson(answer: Inference) {
  return answer.kind === 'exact' ? exactJson(answer) : boundedJson(answer);
}

/** The logarithm stands beside a probability that is below the range of a double. */
function exactJson(answer: ExactInference) {
  const { evidence, logEvidence, network } = answer;
  return {
    posterior: byFault(answer),
    ...(network.functions && { functions: byFunction(answer) }),
    evidence,
    ...(evidence === 0 && { logEvidence }),
  };
}

function boundedJson(answer: Exclude<Inference, ExactInference>) {
  const { low, high, evidenceLow, evidenceHigh } = answer;
  return {
    posterior: byFault(answer),
    evidence: (evidenceLow + evidenceHigh) / 2,
    bounds: {
      posterior: { low: byFault(answer, low), high: byFault(answer, high) },
      evidence: { low: evidenceLow, high: evidenceHigh },
    },
  };
}

function asText(answer: Inference): string {
  const ranked = answer.faults
    .map((id, i) => [id, answer.posterior[i]!] as const)
    .sort(([, a], [, b]) => b - a);
  return table(ranked.map(([id, p]) => [id, `${(100 * p).toPrecision(4)} %`] as const)).join('\n');
}

function boundedNote({ cells, limit }: { readonly cells: number; readonly limit: number }): string {
  return `An exact answer would take ${cells} table cells, and ${limit} are allowed: each number is the middle of its bounds.`;
}
