package main

import (
	"context"
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"
)

func TestOnlyWhatIsFullyInstalledCountsAsInstalled(t *testing.T) {
	// What dpkg-query prints for packages that are installed, installed and
	// held, removed with settings left, half configured, and for two
	// architectures of one package.
	out := "gcc install ok installed\n" +
		"xorg-dev hold ok installed\n" +
		"xvfb deinstall ok config-files\n" +
		"xdotool install ok half-configured\n" +
		"libgl1 install ok installed\nlibgl1 install ok installed\n" +
		"sqlite3 unknown ok not-installed\n" +
		"broken install reinstreq installed\n"
	want := map[string]bool{"gcc": true, "xorg-dev": true, "libgl1": true}
	if got := installed(out); !reflect.DeepEqual(got, want) {
		t.Errorf("installed = %v, want %v", got, want)
	}
	if got := installed(""); len(got) != 0 {
		t.Errorf("nothing printed, yet installed = %v", got)
	}
}

func TestWhatIsMissingIsNamedInOrderAndNothingElse(t *testing.T) {
	needs := []need{{"a", "x"}, {"b", "y"}, {"c", "z"}}
	for _, c := range []struct {
		have map[string]bool
		want []string
	}{
		{nil, []string{"a", "b", "c"}},
		{map[string]bool{"b": true, "other": true}, []string{"a", "c"}},
		{map[string]bool{"a": true, "b": true, "c": true}, nil},
	} {
		if got := packages(missing(needs, c.have)); !slices.Equal(got, c.want) {
			t.Errorf("with %v: missing %v, want %v", c.have, got, c.want)
		}
	}
}

func TestEveryNeedSaysWhatItIsForAndIsListedOnce(t *testing.T) {
	seen := map[string]bool{}
	for _, n := range append(slices.Clone(windowNeeds), testNeeds...) {
		if n.why == "" || seen[n.pkg] {
			t.Errorf("%q: reason %q, listed before: %v", n.pkg, n.why, seen[n.pkg])
		}
		seen[n.pkg] = true
	}
	if got := reasons([]need{{"gcc", "compiling"}}); !strings.Contains(got, "gcc") || !strings.Contains(got, "for compiling") {
		t.Errorf("reasons = %q: no package or no reason in it", got)
	}
}

func TestAptAsksNothingAndUpdatesFirst(t *testing.T) {
	for _, root := range []bool{true, false} {
		plan := aptPlan([]string{"gcc", "xvfb"}, root)
		if len(plan) != 2 {
			t.Fatalf("root %v: %d commands, want update and install", root, len(plan))
		}
		for _, c := range plan {
			if (c[0] == "sudo") == root {
				t.Errorf("root %v: %v", root, c)
			}
			if !slices.Contains(c, "DEBIAN_FRONTEND=noninteractive") || !slices.Contains(c, "-y") {
				t.Errorf("this would ask a question: %v", c)
			}
		}
		if !slices.Contains(plan[0], "update") {
			t.Errorf("the first command is %v, want update", plan[0])
		}
		if got := plan[1][len(plan[1])-2:]; !slices.Equal(got, []string{"gcc", "xvfb"}) {
			t.Errorf("installs %v", got)
		}
		if got := strings.Count(byHand([]string{"gcc"}, !root), "sudo "); (got == 0) != root {
			t.Errorf("root %v: by hand %q", root, byHand([]string{"gcc"}, !root))
		}
	}
}

func TestTheEnvironmentIsChangedByNameOnly(t *testing.T) {
	base := []string{"LANG=C", "LC_ALL=C", "PATH=/bin", "DISPLAYS=2"}
	got := environ(base, "LANG=en_US.UTF-8", "LC_ALL", "DISPLAY", "NEW=a=b")
	want := []string{"PATH=/bin", "DISPLAYS=2", "LANG=en_US.UTF-8", "NEW=a=b"}
	if !slices.Equal(got, want) {
		t.Errorf("environ = %v, want %v", got, want)
	}
}

func TestACommandIsShownAsItCouldBeTyped(t *testing.T) {
	got := line([]string{"CGO_ENABLED=0", "DISPLAY"}, "go", []string{"test", "-run", "^$", ""})
	if want := "CGO_ENABLED=0 go test -run '^$' ''"; got != want {
		t.Errorf("line = %s, want %s", got, want)
	}
}

func TestOnlyLinuxWithNeitherDisplayHasNoWindow(t *testing.T) {
	for _, c := range []struct {
		goos, set string
		want      bool
	}{
		{"linux", "", false},
		{"linux", "DISPLAY", true},
		{"linux", "WAYLAND_DISPLAY", true},
		{"darwin", "", true},
		{"windows", "", true},
	} {
		getenv := func(name string) string {
			if name == c.set {
				return ":0"
			}
			return ""
		}
		if got := hasDisplay(c.goos, getenv); got != c.want {
			t.Errorf("%s with %q set: %v, want %v", c.goos, c.set, got, c.want)
		}
	}
}

func TestEveryPackageIsTestedOnceWithOrWithoutAWindow(t *testing.T) {
	rest, window := split([]string{"tarpside/cmd/tarpline", "tarpside/cmd/tarpside", "tarpside/cmd/tarpside/inner", "tarpside/cmd/tarpsides", "tarpside/model"})
	if want := []string{"tarpside/cmd/tarpline", "tarpside/cmd/tarpsides", "tarpside/model"}; !slices.Equal(rest, want) {
		t.Errorf("without a window: %v, want %v", rest, want)
	}
	if want := []string{"tarpside/cmd/tarpside", "tarpside/cmd/tarpside/inner"}; !slices.Equal(window, want) {
		t.Errorf("with a window: %v, want %v", window, want)
	}
}

func TestEveryTestRunIsFresh(t *testing.T) {
	args := testArgs([]string{"-short"}, []string{"tarpside/model"}, "-race")
	for _, want := range []string{"-race", "-count=1", "-short", "tarpside/model"} {
		if !slices.Contains(args, want) {
			t.Errorf("%q is not in go %v", want, args)
		}
	}
}

func TestPackagesThatDrawAreTestedApartFromTheRest(t *testing.T) {
	draw, rest := splitDrawing([]string{"tarpside/cmd/gallery", "tarpside/cmd/tarpline", "tarpside/model", "tarpside/ui", "tarpside/ui/parts", "tarpside/uix"})
	if want := []string{"tarpside/cmd/gallery", "tarpside/ui", "tarpside/ui/parts"}; !slices.Equal(draw, want) {
		t.Errorf("that draw: %v, want %v", draw, want)
	}
	if want := []string{"tarpside/cmd/tarpline", "tarpside/model", "tarpside/uix"}; !slices.Equal(rest, want) {
		t.Errorf("the rest: %v, want %v", rest, want)
	}
}

func TestAFailedStageStopsTheRestUnlessItSaysToGoOn(t *testing.T) {
	for _, c := range []struct {
		name string
		goOn bool
		fail string
		want []string
		ok   bool
	}{
		{"none fails", false, "", []string{"a", "b", "c"}, true},
		{"the second fails", false, "b", []string{"a", "b"}, false},
		{"the second fails and goes on", true, "b", []string{"a", "b", "c"}, false},
		{"the last fails", false, "c", []string{"a", "b", "c"}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			var ran []string
			var stages []stage
			for _, name := range []string{"a", "b", "c"} {
				stages = append(stages, stage{name: name, goOn: c.goOn, do: func(context.Context) error {
					ran = append(ran, name)
					if name == c.fail {
						return errors.New("broken")
					}
					return nil
				}})
			}
			err := runStages(t.Context(), stages)
			if !slices.Equal(ran, c.want) || (err == nil) != c.ok {
				t.Errorf("ran %v, error %v; want %v, ok %v", ran, err, c.want, c.ok)
			}
		})
	}
}

func TestTheSummaryNamesEveryStageOnOneLine(t *testing.T) {
	for _, c := range []struct {
		passed, failed, unrun []string
		want                  string
	}{
		{[]string{"a", "b"}, nil, nil, "PASSED: a; b"},
		{[]string{"a"}, []string{"b"}, []string{"c"}, "PASSED: a | FAILED: b | NOT RUN: c"},
		{nil, []string{"a"}, nil, "PASSED: nothing | FAILED: a"},
	} {
		if got := summary(c.passed, c.failed, c.unrun); got != c.want {
			t.Errorf("summary = %q, want %q", got, c.want)
		}
	}
}

func TestAWrongCommandLineIsAUsageError(t *testing.T) {
	for _, args := range [][]string{nil, {"fly"}, {"test", "-fast"}, {"test", "extra"}} {
		if err := command(t.Context(), args); !errors.Is(err, errUsage) {
			t.Errorf("dev %v: %v, want a usage error", args, err)
		}
	}
}
