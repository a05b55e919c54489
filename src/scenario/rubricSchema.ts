import * as z from 'zod/mini';
import { TEST_KINDS } from '../bench/paper.ts';
import { SCORING_RULES } from './public/rubric.ts';

/** What a rubric looks like, field by field; what one field says of another is checked in checkRubric.ts. */
const text = (most: number) => z.string().check(z.minLength(1), z.maxLength(most));
const points = z.number().check(z.minimum(0), z.maximum(100));

export const rubricSchema = z.strictObject({
  name: text(80),
  version: z.int().check(z.minimum(1), z.maximum(1_000_000)),
  criteria: z
    .array(z.strictObject({ criterion: text(40), weight: points, threshold: z.exactOptional(z.number()) }))
    .check(z.minLength(1), z.maxLength(200)),
  houseSequence: z.exactOptional(
    z.array(z.enum(TEST_KINDS)).check(z.minLength(2), z.maxLength(TEST_KINDS.length)),
  ),
  sure: z.nullable(z.strictObject({ rule: z.enum(SCORING_RULES), weight: points })),
});
