/** Where vanes must stand in a tube or cone, and the proof that they do their work there. */
package darkrim.study.vanes;
