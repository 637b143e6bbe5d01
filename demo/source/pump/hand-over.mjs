/** What leaves, what was said, what stays open. */
export function handOver({ log, photograph }) {
  log.clock('2026-03-21 08:40');
  photograph('clean', 'Front as it leaves', 'hand-over', 'after', 'machine');
  log.clock('09:30');
  log.add('hand-over', {
    receivedBy: 'Orla Finch',
    told: 'Fresh alcohol-free fuel only. Tap shut and bowl run dry before it stands for more than a month. Fill the pump before every start. Outdoors, never inside the pump house.',
    declined: [
      'New strainer for the suction hose: the cracked cage lets pebbles into the pump. Signed O. Finch.',
    ],
    nextDue: [
      { what: 'New recoil rope', when: '2026-04-02' },
      { what: 'First oil and a look under it', when: '2026-05-16' },
      { what: 'Drain the fuel, run the bowl dry', when: '2026-10-24' },
      { what: 'Oil, plug, air cleaner, valve clearance, crankshaft end play', when: '2027-03-15' },
    ],
  });
  log.add('stage', {
    stage: 'hand-over',
    state: 'finished',
    reason: 'Record and old parts in a bag handed over with the pump.',
  });
}
