import fc from 'fast-check';

/** Random tests repeat exactly; FC_SEED tries others. */
fc.configureGlobal({ seed: Number(process.env.FC_SEED ?? 20261125) });
