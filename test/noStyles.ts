/** Stands in for style sheets: nothing is laid out in these tests. */
export {};
