/**
 * Works through items in order, so many at a time: what waits for its turn holds no arrays yet.
 * @returns what came of each, in their order; throws what the first that fails throws.
 */
export async function inLanes<Item, Result>(
  items: readonly Item[],
  lanes: number,
  work: (item: Item, index: number) => Promise<Result>,
): Promise<Result[]> {
  const results: Result[] = Array.from({ length: items.length });
  let next = 0;
  let failed = false;
  const lane = async (): Promise<void> => {
    while (next < items.length && !failed) {
      const index = next++;
      try {
        results[index] = await work(items[index], index);
      } catch (error) {
        failed = true;
        throw error;
      }
    }
  };
  await Promise.all(Array.from({ length: Math.min(lanes, items.length) }, lane));
  return results;
}
