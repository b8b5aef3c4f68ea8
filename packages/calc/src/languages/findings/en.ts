/** What is wrong or odd, in English: it is where the codes are, for every finding has its English sentence with it. */
export { findingWords, type FindingWords } from "../../stages/index.js";
