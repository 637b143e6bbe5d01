/** The works this room leans on, by title, so that every answer names them the same way. */
export const sources = {
  unified: 'ASME B1.1-2003, Unified inch screw threads',
  isoThreads: 'ISO 68-1, ISO 261 and ISO 724, metric screw threads',
  isoStrength: 'ISO 898-1, mechanical properties of fasteners',
  saeGrades: 'SAE J429, mechanical and material requirements for externally threaded fasteners',
  machineDesign: 'Mechanical Engineering Design, 9th ed.',
  boltedJoints: 'Handbook of Bolts and Bolted Joints, ch. 2, Table 1',
  fastenerStandards: 'IFI Fastener Standards, 5th ed., N-12 and N-16',
  joining: 'Mechanical Fastening, Joining, and Assembly, p. 85',
  spacecraft: 'NASA RP-1228 and NASA-STD-5020 torque equation (from memory)',
  wrenches: 'ISO 6789-1:2017 and ASME B107.300 (both from memory)',
  flange: 'ASME PCC-1, legacy cross pattern (from memory)',
  metricInserts: 'ASME B18.29.2M, helical coil screw thread inserts, metric',
  inchInserts: 'ASME B18.29.1, helical coil screw thread inserts, inch',
  plugChart: "a spark plug maker's fitting chart, by thread, seat and head metal",
} as const;

export const commonPractice = 'common practice';
export const tradeJudgement = 'trade judgement, no source';
