import type { Bond } from './bonds.ts';

/** The cause tells another place for the board that the follower is about, clear of what stands in its space. */
export const boardToBeMoved: Bond = ({ related: [board = ''], advice = [] }, { related }) =>
  related.includes(board) && advice.some((lines) => lines.some(({ path }) => path === `/boards/${board}/at`));

/** Both are about what one thing in the space stands in the way of, and what lifts the board clear is told at the cause. */
export const liftedByCause: Bond = (cause, follower, { findings }) => {
  const [of, other] = [cause, follower].map(({ related }) => related.slice(1).join(' '));
  return (
    (cause.advice ?? []).length > 0 &&
    of === other &&
    findings.indexOf(cause) < findings.indexOf(follower) &&
    (cause.level === 'stop' || follower.level !== 'stop')
  );
};
