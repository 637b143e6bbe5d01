import fc from 'fast-check';

// One seed for every property that names none of its own, so that a run can be repeated and a mutant that dies
// once dies every time.
fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 20_260_114 });
