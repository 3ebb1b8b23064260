/** What the engines say on the console of a server that is stopped on purpose. */
export const UNREACHED =
  /ERR_CONNECTION_REFUSED|Failed to load resource|NetworkError when attempting|Load failed/;
