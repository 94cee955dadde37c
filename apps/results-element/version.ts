/** Of the element; it stands in its address. A change of the element is another version. */
export const VERSION = '1.0.0';
