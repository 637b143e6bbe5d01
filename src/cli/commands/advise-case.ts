import { builtInCatalog, byId, type Catalog } from '../../catalog/index.js';
import { adviseCase, type CaseAdvice, readCase } from '../../job/index.js';
import { listed, minutesWords, percent } from '../../phrase/index.js';
import { type Call, flag, type Surroundings } from '../command.js';
import { readJson } from './in-json.js';
import { inShape } from './in-shape.js';

/** A machine that its owner complains of, with a look taken and a repair made. */
export const caseExample = exampleOf(builtInCatalog());

function exampleOf({ complaints, checks, faults }: Catalog) {
  const [look] = checks.filter((c) => !c.when?.architecture && c.outcomes.length > 2);
  return {
    facts: { architecture: 'side-valve', storedMonths: 18 },
    complaints: [complaints[0]!.id],
    seen: [{ check: look!.id, outcomes: [look!.outcomes[1]!.id] }],
    decided: [{ fault: faults[0]!.id, choice: 'repaired' }],
    rate: 70,
  };
}

/** Advises on a machine told in a file: the answers of a job, without a job. */
export async function adviseOnCase(file: string, call: Call, around: Surroundings): Promise<void> {
  const given = await readJson(file);
  const catalog = builtInCatalog();
  const advice = inShape(file, caseExample, () => adviseCase(catalog, readCase(catalog, given)));
  around.out(flag(call, 'json') ? JSON.stringify(advice, null, 2) : asText(catalog, advice).join('\n'));
}

const mostFaults = 8;
const mostChecks = 5;

function asText(catalog: Catalog, advice: CaseAdvice): string[] {
  const faults = byId(catalog.faults);
  const checks = byId(catalog.checks);
  const { minutes, total } = advice.worth;
  return [
    ...(advice.stop === undefined ? [] : [`Stop. ${advice.stop}`, '']),
    ...advice.faults
      .slice(0, mostFaults)
      .map(({ id, probability }) => `${percent(probability)}  ${faults.get(id)!.name}`),
    '',
    advice.enough ? 'Enough is seen to act.' : 'Check next:',
    ...advice.next
      .slice(0, mostChecks)
      .map((n) => `  ${checks.get(n.check)!.title}, ${Math.round(n.minutes)} min (${listed(n.outcomes)})`),
    ...advice.barred.slice(0, mostChecks).map((b) => `  not now: ${checks.get(b.check)!.title}, ${b.why}`),
    '',
    `It will take ${minutesWords(minutes.low)} to ${minutesWords(minutes.high)} at the bench${total ? `, about ${Math.round(total.median)} in money` : ''}.`,
  ];
}
