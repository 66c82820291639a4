/**
 * Something a person gave is wrong. The message is one clear sentence for that person: which file, which feature,
 * which property, what was found, what is expected.
 */
export class BadInputError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'BadInputError';
  }
}
