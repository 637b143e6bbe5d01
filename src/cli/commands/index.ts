import type { Listed } from '../command.js';

/** In the order of the help: what is done daily first. */
export const commands: readonly Listed[] = [
  {
    name: 'serve',
    purpose: 'Open the application on this computer; with --lan also to paired phones of the shop’s network.',
    load: async () => (await import('./serve.js')).serve,
  },
  {
    name: 'work',
    purpose: 'Do one calculation of the reference desk; alone it lists them, with a name it explains one.',
    load: async () => (await import('./work.js')).work,
  },
  {
    name: 'infer',
    purpose: 'Work out how probable each fault of a fault network is, given what was seen.',
    load: async () => (await import('./infer.js')).infer,
  },
  {
    name: 'bench',
    purpose: 'Lay out the work of several jobs over time: least lateness, then the soonest finish.',
    load: async () => (await import('./bench-schedule.js')).benchCommand,
  },
  {
    name: 'basket',
    purpose: 'Find the cheapest basket that covers a list of parts, with shipping and the price of waiting.',
    load: async () => (await import('./basket.js')).basketCommand,
  },
  {
    name: 'listen',
    purpose: 'Hear from a recording how fast an engine turns, how it starts and whether it hunts.',
    load: async () => (await import('./listen.js')).listen,
  },
  {
    name: 'sight',
    purpose: 'Measure a gasket, a plate or bolts from a photograph taken on the printed mat.',
    load: async () => (await import('./sight.js')).sight,
  },
  {
    name: 'hear',
    purpose: 'Say which of a few phrases somebody says in a recording.',
    load: async () => (await import('./hear.js')).hear,
  },
  {
    name: 'mat',
    purpose: 'Print the sheet on which parts are photographed to be measured.',
    load: async () => (await import('./mat.js')).mat,
  },
  {
    name: 'jobs',
    purpose: 'List the jobs of the store.',
    load: async () => (await import('./jobs.js')).jobs,
  },
  {
    name: 'find',
    purpose: 'Find jobs by anything that stands in them: a part number, a bag, an owner, a torque, a day.',
    load: async () => (await import('./find.js')).find,
  },
  {
    name: 'advise',
    purpose: 'Say what is probably wrong with a job’s machine, and what to check next.',
    load: async () => (await import('./advise.js')).advise,
  },
  {
    name: 'frequencies',
    purpose: 'Show how the shop’s own finished jobs shift the catalog’s fault frequencies.',
    load: async () => (await import('./frequencies.js')).frequencies,
  },
  {
    name: 'pack',
    purpose: 'Check, add, list or remove a catalog pack of the shop’s own.',
    load: async () => (await import('./pack.js')).pack,
  },
  {
    name: 'record',
    purpose: 'Print a job’s service record as PDF.',
    load: async () => (await import('./record.js')).record,
  },
  {
    name: 'export',
    purpose: 'Write one job with its pictures into a file that “wristpin import” takes in.',
    load: async () => (await import('./export.js')).exportCommand,
  },
  {
    name: 'import',
    purpose: 'Take in a job that “wristpin export” wrote. Taking it in twice changes nothing.',
    load: async () => (await import('./import.js')).importCommand,
  },
  {
    name: 'backup',
    purpose: 'Write the whole store, log and pictures, into one file and check that file.',
    load: async () => (await import('./backup.js')).backup,
  },
  {
    name: 'restore',
    purpose: 'Fill an empty store from a backup. A store that holds anything is left as it is.',
    load: async () => (await import('./restore.js')).restore,
  },
  {
    name: 'verify',
    purpose: 'Read the whole store once and say what is wrong with it.',
    load: async () => (await import('./verify.js')).verify,
  },
  {
    name: 'reindex',
    purpose: 'Make anew what lists and searches need beside the log. The log itself is only read.',
    load: async () => (await import('./reindex.js')).reindex,
  },
  {
    name: 'demo',
    purpose: 'Put the invented job into the store, or take every invented job out again.',
    load: async () => (await import('./demo.js')).demo,
  },
];
