/** Opens the phone's own print dialog for the page as it stands. */
export const printPage = (): void => globalThis.print();
