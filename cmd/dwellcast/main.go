// Command dwellcast forecasts the throughput of a carton erect-fill-seal-offload line.
package main

import "os"

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }
