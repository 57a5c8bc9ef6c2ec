/**
 * Where the X-rays of a spot come from: lines, overlaps, depth, absorption, tilt, films, small patches.
 *
 * <p>Pure calculation on mass fractions. Units inside the package: energies keV (separations and peak widths eV),
 * lengths nm, mass depths g/cm², densities g/cm³, mass absorption cm²/g, angles degrees with {@code Deg} in the name.
 * Every model says where it was found weak; {@link surfeit.xray.ModelBounds} turns that into wider bounds.
 */
package surfeit.xray;
