package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"
)

// staticcheck is the linter and its version, run through go run so that its
// modules stay out of go.mod. 2026.2 is the first line that asks for Go 1.26.
const staticcheck = "honnef.co/go/tools/cmd/staticcheck@v0.8.2"

// pure is what must build and test with no C compiler and no display.
var pure = []string{"./model/...", "./board/...", "./ui/...", "./cmd/tarpline/...", "./cmd/gallery/..."}

// windowPackages ends the import path of the only packages that open a window.
const windowPackages = "/cmd/tarpside"

// steady is the environment of every test: one language and one scale, so that
// pictures come out the same everywhere, and no display that a test might use
// without saying so.
var steady = []string{"LANG=en_US.UTF-8", "FYNE_SCALE=1", "CGO_ENABLED=1",
	"LC_ALL", "LC_MESSAGES", "LANGUAGE", "FYNE_THEME", "FYNE_FONT", "DISPLAY", "WAYLAND_DISPLAY"}

// stage is one step of "dev test".
type stage struct {
	name string
	do   func(context.Context) error
	// goOn lets the later stages run when this one fails: their answer is
	// worth having all the same.
	goOn bool
}

// runTests is "dev test".
func runTests(ctx context.Context, args []string) error {
	flags := flag.NewFlagSet("test", flag.ContinueOnError)
	flags.SetOutput(io.Discard) // main prints the usage
	short := flags.Bool("short", false, "try fewer random cases")
	verbose := flags.Bool("v", false, "name every test")
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return err
		}
		return fmt.Errorf("%w: %w", errUsage, err)
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("%w: test takes no %q", errUsage, flags.Arg(0))
	}
	headline("What the tests need")
	if err := provide(ctx, "The test run", append(slices.Clone(windowNeeds), testNeeds...)); err != nil {
		return err
	}
	var extra []string
	if *short {
		extra = append(extra, "-short")
	}
	if *verbose {
		extra = append(extra, "-v")
	}
	return runStages(ctx, testStages(extra))
}

// testStages lists the stages in order, cheap ones first. extra goes to go test.
func testStages(extra []string) []stage {
	goTool := func(set []string, args ...string) func(context.Context) error {
		return func(ctx context.Context) error { return show(ctx, set, "go", args...) }
	}
	return []stage{
		{name: "gofmt", do: checkFormat},
		{name: "go vet", do: goTool([]string{"CGO_ENABLED=1"}, "vet", "./...")},
		{name: "staticcheck", do: goTool([]string{"CGO_ENABLED=1"}, "run", staticcheck, "./...")},
		{name: "build without C", do: goTool([]string{"CGO_ENABLED=0"}, append([]string{"build"}, pure...)...)},
		{name: "vet of the tests without C", do: goTool([]string{"CGO_ENABLED=0"}, append([]string{"vet"}, pure...)...)},
		{name: "go test -race, no display", goOn: true, do: func(ctx context.Context) error {
			rest, _, err := splitPackages(ctx)
			if err != nil {
				return err
			}
			_, plain := splitDrawing(rest)
			return show(ctx, steady, "go", testArgs(extra, plain, "-race")...)
		}},
		{name: "go test -race, the screens", goOn: true, do: func(ctx context.Context) error {
			return testDrawing(ctx, extra, "-race", "-skip="+walks)
		}},
		{name: "go test, every screen walked", goOn: true, do: func(ctx context.Context) error {
			return testDrawing(ctx, extra, "-run="+walks)
		}},
		{name: "go test -race, the window", do: func(ctx context.Context) error {
			_, window, err := splitPackages(ctx)
			if err != nil {
				return err
			}
			return testWindow(ctx, testArgs(extra, window, "-race"))
		}},
	}
}

// walks are the tests that look at every screen or part at every size. They
// run on one goroutine and measure text for minutes: the race detector would
// make that a quarter of an hour and has nothing to find there. They run once,
// without it, and are left out of the race run by the same expression.
const walks = "AtEvery|AtAny|Cut|Language|English|EveryTarget|TwoTargets|EveryStory|EveryText|Palette"

// drawing begins the names of the packages that walks are in.
var drawing = []string{"/ui", "/cmd/gallery"}

// testArgs is a go test of packages: every test run afresh, with a limit that
// only a hang reaches.
func testArgs(extra, pkgs []string, how ...string) []string {
	args := append([]string{"test", "-count=1", "-timeout=40m"}, how...)
	return append(append(args, extra...), pkgs...)
}

// testDrawing runs a part of the tests of the packages that draw.
func testDrawing(ctx context.Context, extra []string, how ...string) error {
	rest, _, err := splitPackages(ctx)
	if err != nil {
		return err
	}
	pkgs, _ := splitDrawing(rest)
	return show(ctx, steady, "go", testArgs(extra, pkgs, how...)...)
}

// splitDrawing parts import paths into those that draw and the rest.
func splitDrawing(pkgs []string) (draw, rest []string) {
	for _, p := range pkgs {
		_, room, _ := strings.Cut(p, "/")
		if slices.ContainsFunc(drawing, func(d string) bool { return strings.HasPrefix("/"+room+"/", d+"/") }) {
			draw = append(draw, p)
		} else {
			rest = append(rest, p)
		}
	}
	return draw, rest
}

// testWindow runs go test with a display: on Linux one of its own that it
// stops afterwards, elsewhere the desktop's.
func testWindow(ctx context.Context, args []string) error {
	set := steady
	if runtime.GOOS == "linux" {
		display, stop, err := startDisplay(ctx)
		if err != nil {
			return err
		}
		defer stop()
		fmt.Printf("Xvfb gives display %s\n", display)
		set = append(slices.Clone(steady), "DISPLAY="+display, "LIBGL_ALWAYS_SOFTWARE=1")
	}
	return show(ctx, set, "go", args...)
}

// splitPackages lists every package of the module, those that open a window
// apart from the rest, so that no package can be forgotten in between.
func splitPackages(ctx context.Context) (rest, window []string, err error) {
	cmd := exec.CommandContext(ctx, "go", "list", "./...")
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, nil, fmt.Errorf("go list ./... failed: %w", err)
	}
	rest, window = split(strings.Fields(string(out)))
	if len(rest) == 0 || len(window) == 0 {
		return nil, nil, fmt.Errorf("go list ./... found %d packages without and %d with a window: both should be there", len(rest), len(window))
	}
	return rest, window, nil
}

// split parts import paths into those that open a window and the rest.
func split(pkgs []string) (rest, window []string) {
	for _, p := range pkgs {
		if strings.Contains(p+"/", windowPackages+"/") {
			window = append(window, p)
		} else {
			rest = append(rest, p)
		}
	}
	return rest, window
}

// checkFormat fails when gofmt would change a file, and names the files.
func checkFormat(ctx context.Context) error {
	gofmt := "gofmt"
	// A Go that is not on the PATH under this name still has its own gofmt.
	if out, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output(); err == nil {
		own := filepath.Join(strings.TrimSpace(string(out)), "bin", "gofmt")
		if has(own) {
			gofmt = own
		}
	}
	fmt.Println("$ gofmt -l .")
	cmd := tool(ctx, nil, gofmt, "-l", ".")
	cmd.Stdout = nil // Output keeps it
	out, err := cmd.Output()
	if err != nil {
		return err
	}
	if len(out) > 0 {
		return fmt.Errorf("run gofmt -w . to format:\n%s", bytes.TrimSpace(out))
	}
	return nil
}

// runStages runs stages in order up to the first that fails (see stage.goOn),
// and ends with one line of what passed.
func runStages(ctx context.Context, stages []stage) error {
	var passed, failed, unrun []string
	stopped := false
	for _, s := range stages {
		if stopped {
			unrun = append(unrun, s.name)
			continue
		}
		headline(s.name)
		start := time.Now()
		err := s.do(ctx)
		took := time.Since(start).Round(100 * time.Millisecond)
		if err != nil {
			fmt.Printf("## %s: failed after %v: %v\n", s.name, took, err)
			failed = append(failed, s.name)
			stopped = !s.goOn || ctx.Err() != nil
			continue
		}
		fmt.Printf("## %s: passed in %v\n", s.name, took)
		passed = append(passed, s.name)
	}
	fmt.Println()
	fmt.Println(summary(passed, failed, unrun))
	if len(failed) > 0 {
		return fmt.Errorf("%d of %d stages failed", len(failed), len(stages))
	}
	return nil
}

// summary is the last line of a test run.
func summary(passed, failed, unrun []string) string {
	parts := []string{"PASSED: " + list(passed)}
	if len(failed) > 0 {
		parts = append(parts, "FAILED: "+list(failed))
	}
	if len(unrun) > 0 {
		parts = append(parts, "NOT RUN: "+list(unrun))
	}
	return strings.Join(parts, " | ")
}

// list joins names, or says there are none.
func list(names []string) string {
	if len(names) == 0 {
		return "nothing"
	}
	return strings.Join(names, "; ")
}

// headline marks where a stage begins in a long log, with a mark that go test
// does not use for lines of its own.
func headline(name string) { fmt.Printf("\n## %s\n", name) }
