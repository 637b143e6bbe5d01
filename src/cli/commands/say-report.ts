import { counted, picturesAndSounds } from '../../phrase/index.js';
import type { VerifyReport } from '../../store/index.js';
import { Failed, type Surroundings } from '../command.js';

/** Says what was found. @throws Failed when something is wrong, so that the exit code says so too */
export function sayReport(report: VerifyReport, { out, err }: Surroundings): void {
  const { entries, jobs, pictures, sounds, problems } = report;
  out(
    `${counted(entries, 'entry', 'entries')} in ${counted(jobs, 'job')}, ${picturesAndSounds(pictures, sounds)}.`,
  );
  if (!report.ok) throw problemsFound(problems, err);
  out('All of it is whole.');
  if (report.sealed === false)
    out(
      'An earlier version wrote it: its lines carry no digests yet, so a changed sign in one would not be seen. This version adds them when it opens the store.',
    );
  if (report.miscounted) throw miscounted(report.miscounted);
}

export function miscounted(jobs: readonly string[]): Failed {
  return new Failed(
    `What lists need of ${counted(jobs.length, 'job')} does not agree with the log, which is whole. “wristpin reindex” makes it anew.`,
  );
}

function problemsFound(problems: readonly string[], err: Surroundings['err']): Failed {
  for (const problem of problems) err(`- ${problem}`);
  return new Failed(
    `${problems.length === 1 ? 'One problem' : `${problems.length} problems`} found. Keep this file as it is, and restore the last good backup into a new store.`,
  );
}
