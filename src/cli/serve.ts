import { serveBuild } from './support/serveBuild.ts';

const DEFAULT_PORT = 4173;

const { url } = await serveBuild(Number(process.env.PORT ?? DEFAULT_PORT));
console.log(`Slot & Riser is open at ${url}`);
