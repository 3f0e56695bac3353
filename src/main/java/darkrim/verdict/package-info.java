/** Requirements against results: a verdict with its evidence for each. */
package darkrim.verdict;
