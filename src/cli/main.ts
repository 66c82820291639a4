import { leeglade } from './leeglade.ts';

process.exitCode = await leeglade(process.argv.slice(2));
