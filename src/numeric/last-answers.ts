import { sameContent } from './same-content.ts';

/**
 * A function that remembers its last few answers and gives them again when it is asked the same: workers get a copy of
 * the site with every job, and most of it is what it was.
 * @param work its answer must hang on nothing else, and nobody may change it, or hand it over to another thread.
 */
export function lastAnswers<Question extends readonly unknown[], Answer>(
  most: number,
  work: (...question: Question) => Answer,
): (...question: Question) => Answer {
  const kept: { question: Question; answer: Answer }[] = [];
  return (...question) => {
    const at = kept.findIndex((each) => sameContent(each.question, question));
    const found = at < 0 ? { question, answer: work(...question) } : kept.splice(at, 1)[0];
    kept.unshift(found);
    kept.length = Math.min(kept.length, most);
    return found.answer;
  };
}
