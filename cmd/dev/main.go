// Command dev holds the two commands of the README, and one more:
//
//	go run ./cmd/dev run [tarpside flags]     set this machine up and start the board on the demo
//	go run ./cmd/dev test [-short] [-v]       set this machine up and check everything
//	go run ./cmd/dev bench [go test flags]    run the benchmarks and print their ratios
//
// It uses the standard library only and needs no C compiler, so that it runs
// on a machine that has Go and nothing else. What it installs, it names first.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

const usage = `usage: go run ./cmd/dev COMMAND

  run [flags]         install what the window needs, build it, start it on the demo;
                      flags go to tarpside. With no display: the demo in this
                      terminal, and every screen as a picture
  test [-short] [-v]  install what the tests need, then format, vet, staticcheck,
                      the build without C, and every test under the race detector
  bench [flags]       run the benchmarks, print ours/bare ratios; flags go to go test
`

// errUsage marks a command line that was not understood: exit 2, as the flag
// package does.
var errUsage = errors.New("command line not understood")

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	err := command(ctx, os.Args[1:])
	stop()
	switch {
	case err == nil:
	case errors.Is(err, flag.ErrHelp):
		fmt.Print(usage)
	case errors.Is(err, errUsage):
		fmt.Fprintf(os.Stderr, "dev: %v\n\n%s", err, usage)
		os.Exit(2)
	default:
		fmt.Fprintf(os.Stderr, "dev: %v\n", err)
		os.Exit(1)
	}
}

// command runs one command from the top of the module, wherever in it the
// program was started.
func command(ctx context.Context, args []string) error {
	if len(args) == 0 {
		return fmt.Errorf("%w: no command given", errUsage)
	}
	if err := toModuleTop(ctx); err != nil {
		return err
	}
	switch args[0] {
	case "run":
		return runBoard(ctx, args[1:])
	case "test":
		return runTests(ctx, args[1:])
	case "bench":
		return runBench(ctx, args[1:])
	case "help", "-h", "-help", "--help":
		return flag.ErrHelp
	}
	return fmt.Errorf("%w: no command %q", errUsage, args[0])
}
