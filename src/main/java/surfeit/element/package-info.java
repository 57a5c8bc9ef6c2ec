/** The chemical elements, their standard atomic weights and densities, and the packaged reference tables. */
package surfeit.element;
