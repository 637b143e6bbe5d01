import type { Component } from '../../../catalog/index.js';
import type { From, Job } from '../../../job/index.js';

/** Views that a later step will want and that no picture or film shows yet. */
export function missingViews(
  job: Job,
  step: From<'step'>,
  component: Component | undefined,
): readonly string[] {
  const shown = job.photographs.filter((p) => p.about === step.step || p.about?.startsWith(`${step.step}:`));
  const covered = new Set(shown.map((p) => p.caption));
  return (component?.views ?? []).filter((v) => !covered.has(v));
}
