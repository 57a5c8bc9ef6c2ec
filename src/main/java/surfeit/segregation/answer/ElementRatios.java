package surfeit.segregation.answer;

import java.util.List;
import surfeit.element.Element;

/**
 * How the ratio of every element to one other stands to the same ratio in the nominal: unlike a factor, it does not move
 * when a third element comes or goes, since closing to 100 % changes both alike.
 *
 * @param to     the element they are ratios to, r: the largest of the nominal that cannot have caused the shift by itself
 * @param ratios R_i of the others, in the order of the nominal
 */
public record ElementRatios(Element to, List<Ratio> ratios) {

    /** One element's ratio to r, against that of the nominal: {@code R_i = (m_i / m_r) / (C0_i / C0_r)}. */
    public record Ratio(Element element, Estimate factor) {
    }
}
