import { mkdirSync, writeFileSync } from 'node:fs';
import { type Answer, refused } from './command.ts';
import { issueLines, readLibrary } from './files.ts';
import { figuresOf } from './matrix/figures.ts';
import { matrixArmatures, matrixOf } from './matrix/matrix.ts';
import { matrixPage } from './matrix/page.ts';

/** The page the matrix is kept on. */
export const MATRIX_PAGE = new URL('../../../docs/fault-matrix.md', import.meta.url);

/** Computes which test shows which fault on every armature, prints it and writes it as a page of the docs. */
export function writeMatrix(args: readonly string[]): Answer {
  if (args.length > 0) return refused(['Usage: npm run -s matrix (no arguments)'], 2);
  const library = readLibrary();
  if (!library.ok) return refused(issueLines('scenarios', library.issues));
  const armatures = matrixArmatures(library.value);
  const page = matrixPage(armatures.map(matrixOf), armatures.map(figuresOf));
  mkdirSync(new URL('.', MATRIX_PAGE), { recursive: true });
  writeFileSync(MATRIX_PAGE, page);
  return { out: [page], err: [], code: 0 };
}
