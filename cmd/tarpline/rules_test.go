package main

import (
	"slices"
	"strings"
	"testing"
)

// Each case logs rows and says what the last of them is answered: its word,
// its reasons, words of its text, and what is where afterwards.
func TestBadInputIsAnsweredAsTheRulesSay(t *testing.T) {
	blank := loadedDesk(t)
	for _, c := range []struct {
		name, rows string
		word       string
		reasons    string
		says       string
		after      string // "item place" that must be in where, or "item home"
	}{
		{"13 of 12", "pull,M06,R41-059,,12,home,tarp,,|hand,M06,R41-059,,13,tarp,at:V1,,",
			"refused", "not_there", "12 here", "R41-059 tarp"},
		{"into another rig", "pull,M15,P71-001,,1,home,tarp,,|stow,M03,P71-001,R41,1,tarp,home,,unused",
			"refused", "wrong_rig", "Rescue-Pumper 71", "P71-001 tarp"},
		{"battery 140", "pull,M06,R41-006,,1,home,tarp,,|stow,M03,R41-006,,1,tarp,home,,battery=140",
			"refused", "bad_reading", "from 0 to 100", "R41-006 tarp"},
		{"battery full", "pull,M06,R41-006,,1,home,tarp,,|stow,M03,R41-006,,1,tarp,home,,battery=full",
			"refused", "bad_reading", "number", "R41-006 tarp"},
		{"battery blank", "pull,M06,R41-006,,1,home,tarp,,|stow,M03,R41-006,,1,tarp,home,,battery=",
			"refused", "unanswered", "", "R41-006 tarp"},
		{"battery 22", "pull,M06,R41-006,,1,home,tarp,,|stow,M03,R41-006,,1,tarp,home,,battery=22",
			"refused", "gate", "battery=22", "R41-006 tarp"},
		{"battery 22, as it is", "pull,M06,R41-006,,1,home,tarp,,|stow,M03,R41-006,,1,tarp,home,,battery=22;as_is",
			"warned", "not_ready", "not ready", "R41-006 home"},
		{"oxygen 700, as it is", "pull,M06,R41-104,,1,home,tarp,,|pull,M06,R41-111,,1,home,tarp,,|stow,M03,R41-111,,1,tarp,home,,oxygen=700;as_is",
			"warned", "not_ready;out_of_service", "out of service", "R41-111 home"},
		{"rope over an edge, as it is", "direct,M06,R41-087,,1,home,at:V1,,|stow,M03,R41-087,,1,at:V1,home,,rope=no;as_is",
			"warned", "not_ready;out_of_service", "out of service", "R41-087 home"},
		{"oxygen waved through", "pull,M06,R41-111,,1,home,tarp,,|override,M02,R41-111,,1,,,,oxygen",
			"refused", "no_override", "Nobody may", "R41-111 tarp"},
		{"a strut into the closed bay", "pull,M06,R41-028,,1,home,tarp,,|stow,M03,R41-028,,1,tarp,home,,unused",
			"refused", "blocked", "Strut foot and strap crate", "R41-028 tarp"},
		{"a strut into the closed bay, it is in", "pull,M06,R41-028,,1,home,tarp,,|stow,M03,R41-028,,1,tarp,home,,unused;in_anyway",
			"warned", "blocked", "Strut foot and strap crate", "R41-028 home"},
		{"a rig that had left", "leave,M08,,E42,,,,,|pull,M06,E42-002,,1,home,tarp,,",
			"warned", "rig_back", "here again", "E42-002 tarp"},
		{"a rig in no table", "arrive,M01,,T9,,,,,", "warned", "new_rig", "in no table", ""},
		{"all of ours is aboard", "direct,M06,R41-001,,1,home,at:V1,,|vouch,M03,,R41,,,,,",
			"warned", "by_word;not_ready", "word", "R41-001 home"},
		{"seen in its slot, no reading", "direct,M06,R41-006,,1,home,at:V1,,|seen,M03,R41-006,,1,at:V1,home,,",
			"warned", "log_was_wrong;not_ready", "not ready", "R41-006 home"},
		{"from the charger, no reading", "direct,M06,R41-006,,1,home,at:V1,,|charge,M03,R41-006,,1,at:V1,charging,,|recharge,M03,R41-006,,1,charging,home,,",
			"warned", "not_ready", "not ready", "R41-006 home"},
		{"from the laundry, no answer", "direct,M06,R41-138,,1,home,at:V1,,|bag,M03,R41-138,,1,at:V1,bagged,,clean=no|clean,M03,R41-138,,1,bagged,home,,",
			"warned", "not_ready", "not ready", "R41-138 home"},
		{"the oxygen case from the ambulance", "handover,M06,R41-104,,1,home,with:MED9,M19,|bring_back,M03,R41-104,,1,with:MED9,home,,count=yes",
			"warned", "unread_inside", "gauge", "R41-104 home"},
		{"an officer of another agency", "pull,M06,R41-006,,1,home,tarp,,|override,M14,R41-006,,1,,,,battery",
			"refused", "not_officer", "officer", "R41-006 tarp"},
		{"oxygen 11500", "pull,M06,R41-104,,1,home,tarp,,|pull,M06,R41-111,,1,home,tarp,,|stow,M03,R41-111,,1,tarp,home,,oxygen=11500",
			"refused", "bad_reading", "11500", "R41-111 tarp"},
		{"a count without a number", "count,M03,R41-056,,,home,,,", "refused", "unanswered", "Blank is never a pass", ""},
		{"an unknown piece", "pull,M06,XX-7,,1,home,tarp,,", "warned", "unknown_item", "XX-7", ""},
		{"closing over an unknown piece", "pull,M06,XX-7,,1,home,tarp,,|close,M01,,,,,,,", "warned", "open_differences", "", ""},
		{"closing after it was settled", "pull,M06,XX-7,,1,home,tarp,,|settle,M06,XX-7,,1,,tarp,,,the wrecker's own bar|close,M01,,,,,,,", "ok", "", "", ""},
		{"closing with a piece unexplained", "count,M03,R41-055,,3,home,,,|close,M01,,,,,,,", "warned", "open_differences", "", "R41-055 unexplained"},
		{"the tarp is still on the ground", "pull,M06,R41-179,,1,home,tarp,,|leave,M02,,R41,,,,,", "warned", "items_out", "still out", "R41-179 tarp"},
		{"a kit complete with a tagged piece", "pull,M06,R41-112,,1,home,tarp,,|pull,M06,R41-104,,1,home,tarp,,|tag,M03,R41-105,,1,,,,oxygen=600|stow,M03,R41-104,,1,tarp,home,,count=yes",
			"warned", "not_fit", "not fit", "R41-104 home"},
		{"a double tap", "pull,M06,R41-001,,1,home,tarp,,|pull,M06,R41-001,,1,home,tarp,,", "refused", "not_there", "Already", "R41-001 tarp"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := newDesk(t)
			blank.must("backup", d.db)
			rows := d.replies(append([]string{"open,M01,,,,,,,"}, strings.Split(c.rows, "|")...)...)
			last := rows[len(rows)-1]
			got, want := strings.Split(last[2], ";"), strings.Split(c.reasons, ";")
			slices.Sort(got)
			if last[1] != c.word || !slices.Equal(got, want) {
				t.Errorf("%s %s, want %s %s", last[1], last[2], c.word, c.reasons)
			}
			if !strings.Contains(last[3], c.says) {
				t.Errorf("it says %q, want %q in it", last[3], c.says)
			}
			item, place, _ := strings.Cut(c.after, " ")
			is := "home"
			for _, r := range d.csv("where") {
				if r[0] == item {
					is = r[4]
				}
			}
			if c.after != "" && is != place {
				t.Errorf("%s is %s afterwards, want %s", item, is, place)
			}
		})
	}
}

func TestWhatWentHomeAsItIsDoesNotCountAsReady(t *testing.T) {
	d := loadedDesk(t)
	ready := func() string {
		for _, r := range d.csv("ready") {
			if r[0] == "R41" && r[1] == "toolbattery" {
				return r[4] + " of " + r[2]
			}
		}
		return "all"
	}
	family := d.csv("ready")
	if len(family) != 1 {
		t.Fatalf("before anything: %q", family)
	}
	d.replies("open,M01,,,,,,,", "pull,M06,R41-006,,1,home,tarp,,", "stow,M03,R41-006,,1,tarp,home,,battery=22;as_is")
	if got := ready(); got != "5 of 6" {
		t.Errorf("after battery 22: %s", got)
	}
	d.replies("check,M03,R41-006,,1,,,,battery=95")
	if got := ready(); got != "all" {
		t.Errorf("after a passing check: %s", got)
	}
}

func TestNoVerbTakesARowOutOfTheLog(t *testing.T) {
	d := loadedDesk(t)
	for _, verb := range []string{"delete", "remove", "stores", "blank_note"} {
		d.stdin = sceneText("open,M01,,,,,,,", verb+",M01,,,,,,,")
		if errs := d.fails(failed, "replay", "-"); !strings.Contains(errs, "is no verb") {
			t.Errorf("%s: %s", verb, errs)
		}
	}
}
