package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"time"
)

// provide sees to it that needs are met, for the purpose given in words. On
// Debian and Ubuntu it says what is missing and installs it; elsewhere it only
// checks that there is a C compiler and says what the rest is called. When
// something is missing that it cannot install, the error names the one command
// that does.
func provide(ctx context.Context, purpose string, needs []need) error {
	if runtime.GOOS != "linux" {
		return haveCompiler(compilerAdvice(runtime.GOOS))
	}
	if !has("dpkg-query") || !has("apt-get") {
		fmt.Printf("This is not Debian or Ubuntu, so nothing is installed here. %s takes, under Debian's names:\n%s", purpose, reasons(needs))
		return haveCompiler("install gcc and the packages above with this system's own installer")
	}
	left := missing(needs, installed(dpkgStatus(ctx, needs)))
	if len(left) == 0 {
		fmt.Printf("%s needs nothing that is not installed.\n", purpose)
		return nil
	}
	fmt.Printf("%s needs %d packages that are not on this machine. Installing with apt-get:\n%s", purpose, len(left), reasons(left))
	return aptInstall(ctx, packages(left))
}

// dpkgStatus asks for the status of each package. dpkg-query exits 1 when it
// has never heard of one of them and still prints the others, so its exit says
// nothing: what is not in the output is not installed.
func dpkgStatus(ctx context.Context, needs []need) string {
	out, _ := exec.CommandContext(ctx, "dpkg-query", append([]string{"-W", "-f", dpkgFormat}, packages(needs)...)...).Output()
	return string(out)
}

// aptInstall runs the plan. A mirror that fails once is asked once more.
func aptInstall(ctx context.Context, pkgs []string) error {
	root, sudo := os.Geteuid() == 0, has("sudo")
	hand := fmt.Sprintf("run this and start again:\n\n  %s\n", byHand(pkgs, sudo && !root))
	if !root && !sudo {
		return fmt.Errorf("not root and no sudo here, so nothing was installed; as root %s", hand)
	}
	const tries = 2
	for try := 1; ; try++ {
		err := runAll(ctx, aptPlan(pkgs, root))
		switch {
		case err == nil:
			return nil
		case ctx.Err() != nil:
			return ctx.Err()
		case try == tries:
			return fmt.Errorf("apt-get did not finish (%w); %s", err, hand)
		}
		fmt.Printf("apt-get failed (%v): trying once more.\n", err)
		time.Sleep(5 * time.Second)
	}
}

// runAll shows and runs commands until one fails.
func runAll(ctx context.Context, commands [][]string) error {
	for _, c := range commands {
		if err := show(ctx, nil, c[0], c[1:]...); err != nil {
			return err
		}
	}
	return nil
}

// haveCompiler fails with advice when Go would find no C compiler: the one CC
// names, else gcc or clang.
func haveCompiler(advice string) error {
	if cc := os.Getenv("CC"); cc != "" || has("gcc") || has("clang") {
		return nil
	}
	return errors.New("no C compiler (gcc or clang) on the PATH, and the window needs one: " + advice)
}

// compilerAdvice says where a C compiler comes from on systems without apt.
func compilerAdvice(goos string) string {
	switch goos {
	case "darwin":
		return "run xcode-select --install and start again"
	case "windows":
		return "install a MinGW-w64 gcc (MSYS2: pacman -S mingw-w64-ucrt-x86_64-gcc), put its bin folder on the PATH and start again"
	}
	return "install gcc and the development files of X11, OpenGL, Wayland and xkbcommon, and start again"
}
