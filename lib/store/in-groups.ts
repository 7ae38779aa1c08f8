import { setImmediate } from 'node:timers/promises';

interface Waiting<Asked, Answer> {
  readonly asked: Asked;
  readonly resolve: (answer: Answer) => void;
  readonly reject: (error: unknown) => void;
}

/**
 * Does what is asked for in groups: what comes while one group is being done makes the next, of at most `most`.
 * `perform` does all of a group or, throwing, nothing of it, and answers in its order. A group that fails is done again
 * one by one, so that whoever is at fault fails alone.
 */
export const inGroups = <Asked, Answer>(
  perform: (group: readonly Asked[]) => Promise<readonly Answer[]>,
  most: number,
): ((asked: Asked) => Promise<Answer>) => {
  const waiting: Waiting<Asked, Answer>[] = [];
  let busy = false;

  const together = async (group: readonly Waiting<Asked, Answer>[]): Promise<void> => {
    const answers = await perform(group.map(({ asked }) => asked));
    group.forEach(({ resolve, reject }, place) => {
      const answer = answers[place];
      if (answer === undefined) reject(new Error('a group was answered in part'));
      else resolve(answer);
    });
  };

  const alone = async (one: Waiting<Asked, Answer>): Promise<void> => {
    try {
      await together([one]);
    } catch (error) {
      one.reject(error);
    }
  };

  const work = async (): Promise<void> => {
    busy = true;
    while (waiting.length > 0) {
      const group = waiting.splice(0, most);
      try {
        await together(group);
      } catch (error) {
        const [only] = group;
        if (group.length === 1) only?.reject(error);
        else for (const one of group) await alone(one);
      }
      // Whoever was answered, or has come meanwhile, joins the next group.
      await setImmediate();
    }
    busy = false;
  };

  return (asked) =>
    new Promise((resolve, reject) => {
      waiting.push({ asked, resolve, reject });
      if (!busy) void work();
    });
};
