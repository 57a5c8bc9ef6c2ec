/** How to measure next: how many particles and spots a question needs, with which reference spots, at which beam energy. */
package surfeit.segregation.plan;
