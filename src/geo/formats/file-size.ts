import { BadInputError } from '../../units/bad-input.ts';

const LARGEST_MB = 200;

/**
 * Refuses a file that is empty or larger than 200 MB. Fit to be asked before the file is read.
 * @throws BadInputError naming the file.
 */
export function checkFileSize(fileName: string, bytes: number): void {
  if (bytes === 0) throw new BadInputError(`${fileName}: the file is empty.`);
  if (bytes > LARGEST_MB * 1e6) {
    throw new BadInputError(
      `${fileName}: the file has ${Math.round(bytes / 1e6)} MB, at most ${LARGEST_MB} MB can be opened; cut it to the surroundings of the site.`,
    );
  }
}
