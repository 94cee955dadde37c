/** A style sheet is imported for what it does. */
declare module '*.css';
