export interface BenchRow {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly note: string;
}
