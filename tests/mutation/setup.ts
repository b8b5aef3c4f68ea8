// A change is noticed by the first failure; the smallest case that shows it is of no interest.
import fc from "fast-check";

fc.configureGlobal({ endOnFailure: true });
