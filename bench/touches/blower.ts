import type { AtJob } from './job.js';
import { look } from './look.js';

/** Job B: an invented blower, its piston scored, declined by its owner and handed back. */
export async function blower(at: AtJob): Promise<void> {
  for (const stage of [hangTag, intake, findings, declined, handedBack]) await stage(at);
}

async function hangTag(at: AtJob): Promise<void> {
  at.hand.stage('Bench');
  await at.press('Hang a tag on a machine');
  await at.type('What it is', 'leaf blower');
  await at.press('Hang the tag');
  await at.page.waitForURL('**/intake');
  await at.settled();
}

async function intake(at: AtJob): Promise<void> {
  at.hand.stage('Intake');
  await at.choose('Used as', 'Blower');
  await at.type('Owner', 'Jens Moe');
  await at.press('Write it down');
  await at.type('In the owner’s words', 'died, will not start');
  await at.press('Write it down');
  await at.tick('Two-stroke');
  await at.press('Write it down');
  await at.photograph('Photograph: front');
}

async function findings(at: AtJob): Promise<void> {
  await at.go('findings');
  await look(at, /^Walk round/, 'nothing missing or loose');
  await at.press('Log something seen', at.page.locator('nav.bottom'));
  await at.type('What', 'piston scored', at.dialog);
  await at.answer(/: (piston or )?bore scored$|: piston or bore scored/);
}

async function declined(at: AtJob): Promise<void> {
  await at.go('worth-it');
  await at.press('Decide');
  await at.tick('The owner declines', at.dialog);
  await at.answer('Write the decision down');
}

async function handedBack(at: AtJob): Promise<void> {
  await at.go('hand-over', 'stages');
  await at.press('Hand over', at.page.locator('nav.bottom'));
  await at.type('What they were told', 'do not run it', at.dialog);
  await at.answer('Handed over');
}
