/** The command line: starts the service, and does single jobs without one. The only place that reads the environment. */
package surfeit.cli;
