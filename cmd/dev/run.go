package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
)

// runBoard is "dev run": the window on the demo, or the demo in the terminal
// where there is no display.
func runBoard(ctx context.Context, args []string) error {
	if !hasDisplay(runtime.GOOS, os.Getenv) {
		return runWithoutWindow(ctx, args)
	}
	if err := provide(ctx, "The window", windowNeeds); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "tarpside-")
	if err != nil {
		return fmt.Errorf("no folder to build in: %w", err)
	}
	defer os.RemoveAll(dir)
	fmt.Println("Building the window. The first time the C parts take some minutes; after that, seconds.")
	program, err := build(ctx, dir, "tarpside", "CGO_ENABLED=1")
	if err != nil {
		return err
	}
	if err := show(ctx, nil, program, append([]string{"-demo"}, args...)...); err != nil && ctx.Err() == nil {
		return fmt.Errorf("tarpside ended with an error: %w", err)
	}
	return nil
}

// hasDisplay reports whether a window can be opened. Only Linux can be without
// a display in a way that its environment tells.
func hasDisplay(goos string, getenv func(string) string) bool {
	return goos != "linux" || getenv("DISPLAY") != "" || getenv("WAYLAND_DISPLAY") != ""
}

// runWithoutWindow shows the same board with nothing installed: the demo as
// text, and every screen drawn to a PNG. The pictures are kept.
func runWithoutWindow(ctx context.Context, args []string) error {
	fmt.Println("There is no display here (neither DISPLAY nor WAYLAND_DISPLAY is set), so no window is opened and nothing is installed.")
	fmt.Println("The demo runs in this terminal instead, and every screen is drawn to a PNG.")
	if len(args) > 0 {
		fmt.Printf("Not used, because they are for the window: %q\n", args)
	}
	bin, err := os.MkdirTemp("", "tarpside-")
	if err != nil {
		return fmt.Errorf("no folder to build in: %w", err)
	}
	defer os.RemoveAll(bin)
	if err := buildAndShow(ctx, bin, "tarpline", "demo"); err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "tarpside-screens-")
	if err != nil {
		return fmt.Errorf("no folder for the pictures: %w", err)
	}
	if err := buildAndShow(ctx, bin, "gallery", "-out", dir, "-sizes", "1280x800"); err != nil {
		return err
	}
	fmt.Printf("The screens are in %s\n", dir)
	return nil
}

// buildAndShow builds one program of cmd without C into dir and runs it.
func buildAndShow(ctx context.Context, dir, name string, args ...string) error {
	program, err := build(ctx, dir, name, "CGO_ENABLED=0")
	if err != nil {
		return err
	}
	if err := show(ctx, nil, program, args...); err != nil {
		return fmt.Errorf("%s ended with an error: %w", name, err)
	}
	return nil
}

// build compiles one program of cmd into dir and returns its path. Version
// control is not stamped in: that would make a build depend on who owns the
// folder.
func build(ctx context.Context, dir, name, cgo string) (string, error) {
	program := filepath.Join(dir, name)
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	if err := show(ctx, []string{cgo}, "go", "build", "-buildvcs=false", "-o", program, "./cmd/"+name); err != nil {
		return "", fmt.Errorf("%s did not build: %w", name, err)
	}
	return program, nil
}
