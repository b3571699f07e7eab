import generated from '@generated/version.json';

/** The version of this program, as package.json states it. */
export const PROGRAM_VERSION: string = generated.version;
