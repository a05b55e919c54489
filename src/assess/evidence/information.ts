/** Chance that an outcome has nothing to do with the part. */
const SLIP = 0.02;

/** Mutual information of rows and columns of a joint distribution, slips mixed in, bits. */
export function information(joint: Float64Array, rows: number, columns: number): number {
  const row = new Float64Array(rows);
  const column = new Float64Array(columns);
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) row[r]! += joint[r * columns + c]!;
    for (let c = 0; c < columns; c++)
      column[c]! += (1 - SLIP) * joint[r * columns + c]! + (SLIP * row[r]!) / columns;
  }
  let bits = 0;
  for (let r = 0; r < rows; r++) {
    for (let c = 0; c < columns; c++) {
      const both = (1 - SLIP) * joint[r * columns + c]! + (SLIP * row[r]!) / columns;
      if (both > 0) bits += both * Math.log2(both / (row[r]! * column[c]!));
    }
  }
  return bits;
}
