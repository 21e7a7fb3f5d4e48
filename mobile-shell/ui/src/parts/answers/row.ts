// A line of a ruled list.
export interface Row {
  label: string;
  /** What it was before; struck out. */
  before?: string;
  value: string;
  after?: string;
  /** A second line under the value. */
  below?: string;
  mark?: boolean;
}
