import { checkRevision, type Revision } from '../procedure';

/** What the writer of published procedures should look at again, a line each; none where nothing is odd. */
export const doubtLines = (revisions: readonly Revision[]): readonly string[] =>
  revisions.flatMap((revision) =>
    checkRevision(revision).doubts.map(
      ({ where, message }) =>
        `Look again at “${revision.title}”, revision ${revision.revision}, ${where}: ${message}`,
    ),
  );
