/** Reading of mesh files, STL and OBJ. Whatever a file holds, memory and time stay bounded and every error has its place. */
package darkrim.layout.mesh;
