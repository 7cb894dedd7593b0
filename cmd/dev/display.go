package main

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"strings"
	"time"
)

// startDisplay starts an X server that draws into memory, large enough for the
// largest screen we test, and returns its display name (":0") and a function
// that stops it. The server picks a free number itself and tells it once it is
// ready, so nothing is guessed and nothing waits longer than it must.
func startDisplay(ctx context.Context) (display string, stop func(), err error) {
	told, tell, err := os.Pipe()
	if err != nil {
		return "", nil, err
	}
	defer told.Close()
	ctx, cancel := context.WithCancel(ctx)
	// The first extra file is descriptor 3 in the child.
	cmd := tool(ctx, nil, "Xvfb", "-displayfd", "3", "-screen", "0", "1920x1200x24", "-nolisten", "tcp")
	cmd.ExtraFiles = []*os.File{tell}
	cmd.Stdin = nil
	err = cmd.Start()
	tell.Close()
	if err != nil {
		cancel()
		return "", nil, fmt.Errorf("the window tests need a display, and Xvfb did not start: %w", err)
	}
	stop = func() {
		cancel()
		_ = cmd.Wait() // it was told to end: how it did says nothing
	}
	// A pipe takes deadlines on every system that has Xvfb.
	_ = told.SetReadDeadline(time.Now().Add(time.Minute))
	number, err := bufio.NewReader(told).ReadString('\n')
	if err != nil {
		stop()
		return "", nil, fmt.Errorf("no display for the window tests: Xvfb started but opened no display within a minute: %w", err)
	}
	return ":" + strings.TrimSpace(number), stop, nil
}
