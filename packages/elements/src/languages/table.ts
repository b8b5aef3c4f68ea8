/**
 * A language's strings; or their values alone, in the order of the English ones, which is what the build makes of a
 * language's file: the names would be a third of it.
 */
export type Table<Strings> = Strings | readonly unknown[];
