import type { TestProject } from 'vitest/node';
import { serveBuild } from '../../../src/cli/support/serveBuild.ts';
import { findChromium } from './chromium.ts';
import './provided.ts';

/** Finds a browser and serves the built app once for all browser tests. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  project.provide('chromium', await findChromium());
  const served = await serveBuild(0);
  project.provide('appUrl', served.url);
  return served.close;
}
