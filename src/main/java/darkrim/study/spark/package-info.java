/** Studies on a cluster of Apache Spark. The only package that knows it; the program runs without it. */
package darkrim.study.spark;
