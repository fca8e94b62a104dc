/** Answers of what is asked again before it has answered: the older never takes the place of the newer, whichever comes first. */
export function inTurn(): () => () => boolean {
  let [asked, told] = [0, 0];
  return () => {
    const turn = ++asked;
    /** To be asked once, when the answer is there: whether it is to be told. */
    return () => {
      if (turn < told) return false;
      told = turn;
      return true;
    };
  };
}
