/** The build collects the styles that a module imports into one file beside the script. */
declare module '*.css';
