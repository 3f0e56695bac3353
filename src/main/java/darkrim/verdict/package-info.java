/**
 * Requirements against results: a verdict with its evidence for each.
 *
 * <p>In: requirements, proofs, and measurements that go on until they decide. Out: pass, fail or undecided for
 * each, with evidence. Main types: {@code Judge} decides, {@code Demand} is what is asked, {@code Evidence} why it
 * is believed, {@code ConfidenceSequence} the interval that may be looked at after every batch, {@code Verdict}
 * the word.
 *
 * <p>It must not know: files, texts, and how results are shown. Begin to read: {@code Judge}.
 */
package darkrim.verdict;
