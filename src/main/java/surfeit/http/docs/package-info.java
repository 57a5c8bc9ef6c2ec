/** The documents: made from {@code openapi.yaml} when the program is built, plain HTML without script. */
package surfeit.http.docs;
