/** Style sheets that the build links; importing one gives nothing. */
declare module '*.css';
