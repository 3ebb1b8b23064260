/** What can run a function in a page: every engine's page can. What is handed over and given back is plain data. */
export interface Evaluates {
  evaluate<R, A>(work: (argument: A) => R | Promise<R>, argument: A): Promise<R>;
}
