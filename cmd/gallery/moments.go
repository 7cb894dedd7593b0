package main

import (
	"slices"

	"tarpside/ui"
)

// moment is a screen at a minute of the demo scene, after some touches
// ("kind id", as in the parts file).
type moment struct {
	name     string
	screen   string
	minute   int
	touch    []string
	practice bool
	late     int    // minutes since the last entry
	pin      string // the officer's PIN, set beforehand
	data     string // which file: one of the kinds in scenes.go; nothing is the demo's
}

// summerWalk and winterNight are the touches that say what a trip is like.
var (
	summerWalk  = []string{"act summer", "act mild", "act rough", "act miles", "digit 1", "digit 5", "digit done", "act hours", "digit 4", "digit 0", "digit done"}
	winterNight = []string{"act winter", "act night", "act wet", "act ice", "act slope", "act rough", "act miles", "digit 1", "digit 5", "digit done", "act feet", "digit 8", "digit 0", "digit 0", "digit done", "act hours", "digit 6", "digit 0", "digit done"}
)

var moments = []moment{
	{name: "tarp", screen: ui.ScreenTarp, minute: 60},
	{name: "tarp full rig", screen: ui.ScreenTarp, minute: 8},
	{name: "tarp few out", screen: ui.ScreenTarp, minute: 8, touch: []string{"rig R41", "act door-L1", "piece R41-001", "piece R41-002", "place at:V1", "place tarp"}},
	{name: "tarp door", screen: ui.ScreenTarp, minute: 8, touch: []string{"rig R41", "act door-L1"}},
	{name: "tarp door staged", screen: ui.ScreenTarp, minute: 8, touch: []string{"rig R41", "act door-L1", "piece R41-001", "piece R41-002"}},
	{name: "tarp door straight", screen: ui.ScreenTarp, minute: 8, touch: []string{"rig R41", "act door-L1", "piece R41-001", "piece R41-002", "place at:V1"}},
	{name: "tarp door many", screen: ui.ScreenTarp, minute: 8, touch: []string{"rig R41", "act door-L3", "piece R41-056"}},
	{name: "tarp rig tab", screen: ui.ScreenTarp, minute: 60, touch: []string{"rig R41"}},
	{name: "tarp exchange", screen: ui.ScreenTarp, minute: 44, touch: []string{"piece R41-009", "place at:V2"}},
	{name: "tarp due", screen: ui.ScreenTarp, minute: 81, touch: []string{"place at:V2", "piece R41-052", "place with:MED9", "act due"}},
	{name: "tarp held", screen: ui.ScreenTarp, minute: 60, touch: []string{"piece R41-001", "act holder", "act hold-evidence", "act s", "act h", "act f", "act done", "piece R41-001", "place at:V1"}},
	{name: "tarp held loading", screen: ui.ScreenTarp, minute: 125, touch: []string{"place at:BANK", "piece R41-061", "act holder", "act hold-evidence", "act s", "act h", "act f", "act done", "screen loadup", "act other", "act collect", "act return-BANK"}},
	{name: "tarp correct last", screen: ui.ScreenTarp, minute: 60, touch: []string{"piece R41-001", "piece R41-052", "place at:V1", "act correct"}},
	{name: "tarp place", screen: ui.ScreenTarp, minute: 60, touch: []string{"place at:V2"}},
	{name: "tarp picked", screen: ui.ScreenTarp, minute: 60, touch: []string{"place at:V2", "act more", "piece R41-055"}},
	{name: "tarp refused", screen: ui.ScreenTarp, minute: 60, touch: []string{"place at:V2", "piece R41-002", "place used"}},
	{name: "tarp find", screen: ui.ScreenTarp, minute: 60, touch: []string{"act find", "act s", "act t", "act r"}},
	{name: "tarp new place", screen: ui.ScreenTarp, minute: 60, touch: []string{"place new"}},
	{name: "tarp picked many", screen: ui.ScreenTarp, minute: 10, touch: []string{"act more", "piece R41-056"}},
	{name: "tarp number", screen: ui.ScreenTarp, minute: 8, touch: []string{"rig R41", "act door-L3", "piece R41-056", "quantity number", "digit 1", "digit 5"}},
	{name: "tarp number set", screen: ui.ScreenTarp, minute: 8, touch: []string{"rig R41", "act door-L3", "piece R41-056", "quantity number", "digit 1", "digit 5", "digit done"}},
	{name: "tarp number too many", screen: ui.ScreenTarp, minute: 8, touch: []string{"rig R41", "act door-L3", "piece R41-056", "quantity number", "digit 3", "digit 7"}},
	{name: "tarp empty place", screen: ui.ScreenTarp, minute: 8, touch: []string{"place at:V1"}},
	{name: "tarp claims", screen: ui.ScreenTarp, minute: 36, touch: []string{"place at:V2", "piece R41-070"}},
	{name: "tarp along", screen: ui.ScreenTarp, minute: 81, touch: []string{"place at:V2", "piece R41-052", "place with:MED9"}},
	{name: "tarp who", screen: ui.ScreenTarp, minute: 60, touch: []string{"piece R41-001", "act holder"}},
	{name: "tarp earlier", screen: ui.ScreenTarp, minute: 60, touch: []string{"piece R41-001", "place at:V2", "piece R41-138", "act earlier", "act earlier", "act earlier"}},
	{name: "tarp pull list", screen: ui.ScreenTarp, minute: 9, touch: []string{"act pull-list"}},
	{name: "tarp unknown", screen: ui.ScreenTarp, minute: 60, touch: []string{"act find", "act l", "act o", "act x", "act log-unknown"}},
	{name: "tarp entries", screen: ui.ScreenTarp, minute: 60, touch: []string{"act entries"}},
	{name: "tarp moved on", screen: ui.ScreenTarp, minute: 36, touch: []string{"act undo"}},
	{name: "tarp correct", screen: ui.ScreenTarp, minute: 36, touch: []string{"act undo", "act correct"}},
	{name: "tarp trail list", screen: ui.ScreenTarp, minute: 60, touch: []string{"act pull-list", "act list-Trail carry-out"}},
	{name: "tarp who named", screen: ui.ScreenTarp, minute: 60, touch: []string{"piece R41-001", "place at:V2", "piece R41-052", "act holder", "rig E42"}},
	{name: "tarp other rig", screen: ui.ScreenMore, minute: 36, touch: []string{"act arrive", "act another-rig"}},
	{name: "tarp before", screen: ui.ScreenTarp, minute: -1},
	{name: "tarp contested", screen: ui.ScreenTarp, minute: 36, touch: []string{"place at:V2"}},
	{name: "tarp practice", screen: ui.ScreenTarp, minute: 20, practice: true},
	{name: "tarp empty", screen: ui.ScreenTarp, data: fileEmpty},
	{name: "glance", screen: ui.ScreenGlance, minute: 60},
	{name: "glance quiet", screen: ui.ScreenGlance, minute: 8},
	{name: "glance aloud", screen: ui.ScreenGlance, minute: 60, touch: []string{"act read-aloud"}},
	{name: "glance low", screen: ui.ScreenGlance, minute: 41},
	{name: "running down", screen: ui.ScreenGlance, minute: 41, touch: []string{"act gauges"}},
	{name: "running no reading", screen: ui.ScreenGlance, minute: 60, touch: []string{"act gauges"}},
	{name: "running nonsense", screen: ui.ScreenGlance, minute: 41, touch: []string{"act gauges", "act read", "digit 1", "digit 1", "digit 5", "digit 0", "digit 0"}},
	{name: "running flow", screen: ui.ScreenGlance, minute: 41, touch: []string{"act gauges", "act read", "digit 4", "digit 0", "digit 0", "digit done"}},
	{name: "settings sums", screen: ui.ScreenSettings, minute: 41, touch: []string{"act limits", "act limit-sums", "act limit-full"}},
	{name: "release", screen: ui.ScreenGlance, minute: 91, touch: []string{"act rig-leaving", "rig E42"}},
	{name: "load up", screen: ui.ScreenLoadUp, minute: 125},
	{name: "load up blocked", screen: ui.ScreenLoadUp, minute: 126, touch: []string{"door T2@2", "slot R41-028"}},
	{name: "load up number", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"slot R41-006", "digit 2", "digit 2"}},
	{name: "load up late", screen: ui.ScreenLoadUp, minute: 153},
	{name: "load up time", screen: ui.ScreenLoadUp, minute: 153, touch: []string{"act other", "act time"}},
	{name: "load up through bay", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"door T2@2"}},
	{name: "load up refused number", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"slot R41-006", "digit 2", "digit 2", "digit done"}},
	{name: "load up sweep", screen: ui.ScreenLoadUp, minute: 153, touch: []string{"door R4", "act other", "act sweep"}},
	{name: "load up sweep hole", screen: ui.ScreenLoadUp, minute: 153, touch: []string{"door R4", "act other", "act sweep", "slot R41-129"}},
	{name: "load up count", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"act count"}},
	{name: "load up other work", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"act other"}},
	{name: "load up collect", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"act other", "act collect"}},
	{name: "load up carry", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"act other", "act carry"}},
	{name: "load up swap", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"act other", "act carry", "piece E42-052@at:V2"}},
	{name: "load up swap noted", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"act other", "act carry", "piece E42-052@at:V2", "act swap-R41-138"}},
	{name: "load up engine", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"act other", "rig E42"}},
	{name: "load up nothing off", screen: ui.ScreenLoadUp, minute: 0},
	{name: "load up done", screen: ui.ScreenLoadUp, minute: 177},
	{name: "release armed", screen: ui.ScreenGlance, minute: 91, touch: []string{"act rig-leaving", "rig E42", "member M08", "act sign"}},
	{name: "release signed", screen: ui.ScreenGlance, minute: 91, touch: []string{"act rig-leaving", "rig E42", "answer chocks=yes", "member M08", "act sign", "act sign-sure"}},
	{name: "leaving armed", screen: ui.ScreenLeaving, minute: 177, touch: []string{"member M02", "act sign"}},
	{name: "leaving looked", screen: ui.ScreenLeaving, minute: 177, touch: []string{"act look-doors", "act look-tailboard", "act look-roof", "act look-chocks"}},
	{name: "leaving aloud", screen: ui.ScreenLeaving, minute: 177, touch: []string{"act read-aloud"}},
	{name: "look for skip", screen: ui.ScreenLookFor, minute: 169, touch: []string{"act skip"}},
	{name: "look for someone", screen: ui.ScreenLookFor, minute: 169, touch: []string{"act with-someone"}},
	{name: "look for found", screen: ui.ScreenLookFor, minute: 169, touch: []string{"act found"}},
	{name: "look for stop", screen: ui.ScreenLookFor, minute: 169, touch: []string{"act stop-looking", "member M02", "act stop-looking"}},
	{name: "more close with PIN", screen: ui.ScreenMore, minute: 177, pin: "4015", touch: []string{"act close-scene", "act close-scene-sure", "digit 4", "digit 0"}},
	{name: "bring back agency", screen: ui.ScreenBringBack, minute: 180, touch: []string{"piece R41-177"}},
	{name: "bring back out of service", screen: ui.ScreenBringBack, minute: 180, touch: []string{"act out-of-service", "piece R41-138", "answer clean=no"}},
	{name: "bring back to do", screen: ui.ScreenBringBack, minute: 180, touch: []string{"act to-do", "piece R41-006"}},
	{name: "bring back number", screen: ui.ScreenBringBack, minute: 180, touch: []string{"act to-do", "piece R41-006", "act read-battery", "digit 9"}},
	{name: "bring back restock", screen: ui.ScreenBringBack, minute: 180, touch: []string{"act restock-list", "act stock-ST13"}},
	{name: "bring back nothing", screen: ui.ScreenBringBack, minute: 0},
	{name: "arrive", screen: ui.ScreenMore, minute: 60, touch: []string{"act arrive"}},
	{name: "new scene", screen: ui.ScreenMore, minute: 60, touch: []string{"act new-scene"}},
	{name: "who has this tablet", screen: ui.ScreenMore, minute: 60, touch: []string{"act who"}},
	{name: "more close armed", screen: ui.ScreenMore, minute: 177, touch: []string{"act close-scene"}},
	{name: "more no scene", screen: ui.ScreenMore, minute: -1},
	{name: "glance no scene", screen: ui.ScreenGlance, minute: -1},
	{name: "leaving nothing off", screen: ui.ScreenLeaving, minute: 0},
	{name: "settings acting officer", screen: ui.ScreenSettings, minute: 60, touch: []string{"act acting"}},
	{name: "settings all limits", screen: ui.ScreenSettings, minute: 60, touch: []string{"act limits"}},
	{name: "stores load tables", screen: ui.ScreenStores, minute: 60, touch: []string{"act load-tables"}},
	{name: "stores number", screen: ui.ScreenStores, minute: 60, touch: []string{"rig R41", "door store-L3", "piece R41-055", "act quantity"}},
	{name: "leaving", screen: ui.ScreenLeaving, minute: 177},
	{name: "leaving early", screen: ui.ScreenLeaving, minute: 60},
	{name: "look for it", screen: ui.ScreenLookFor, minute: 169},
	{name: "look for odds", screen: ui.ScreenLookFor, minute: 153, touch: []string{"piece R41-023", "act not-here", "act not-here"}},
	{name: "look for unsafe", screen: ui.ScreenLookFor, minute: 153, touch: []string{"piece R41-023", "act skip", "act unsafe"}},
	{name: "look for chances", screen: ui.ScreenSettings, minute: 153, touch: []string{"act limits", "act limit-sums", "act limit-chance"}},
	{name: "look for nothing", screen: ui.ScreenLookFor, minute: 10},
	{name: "bring back", screen: ui.ScreenBringBack, minute: 180},
	{name: "more", screen: ui.ScreenMore, minute: 60},
	{name: "tarp wet lock", screen: ui.ScreenTarp, minute: 60, touch: []string{"screen wet-lock"}},
	{name: "glance wet lock", screen: ui.ScreenGlance, minute: 60, touch: []string{"screen wet-lock", "act unlock"}},
	{name: "settings", screen: ui.ScreenSettings, minute: 60},
	{name: "settings card", screen: ui.ScreenSettings, minute: 60, touch: []string{"act card"}},
	{name: "settings limits", screen: ui.ScreenSettings, minute: 60, touch: []string{"act limits", "act limit-oxygen"}},
	{name: "settings limit twice", screen: ui.ScreenSettings, minute: 60, touch: []string{"act limits", "act limit-battery", "piece R41-005", "digit 2", "digit 0", "digit done"}},
	{name: "settings pin", screen: ui.ScreenSettings, minute: 60, touch: []string{"act pin", "digit 4", "digit 0"}},
	{name: "tarp empty load", screen: ui.ScreenTarp, data: fileEmpty, touch: []string{"act load-department", "act look-through"}},
	{name: "paper list", screen: ui.ScreenMore, minute: 60, touch: []string{"act papers"}},
	{name: "paper enter", screen: ui.ScreenMore, minute: 60, touch: []string{"act papers", "act from-paper", "act next-line", "digit 1", "digit 9", "digit 4", "digit 0", "digit done", "act s", "act t", "piece R41-055", "digit 4", "digit done", "place at:V2", "member M02",
		"act next-line", "act same-time", "act unreadable", "place home", "member unknown"}},
	{name: "paper piece", screen: ui.ScreenMore, minute: 60, touch: []string{"act papers", "act from-paper", "act next-line", "act unreadable", "act s", "act t"}},
	{name: "paper where", screen: ui.ScreenMore, minute: 60, touch: []string{"act papers", "act from-paper", "act next-line", "act unreadable", "act unreadable"}},
	{name: "paper time", screen: ui.ScreenMore, minute: 60, touch: []string{"act papers", "act from-paper", "act next-line", "digit 1", "digit 9", "digit 4"}},
	{name: "paper stick", screen: ui.ScreenMore, minute: 60, touch: []string{"act papers", "act stick", "act stick-t-4k2m-20261125-1930.tarpside"}},
	{name: "paper made", screen: ui.ScreenMore, minute: 60, touch: []string{"act papers", "act paper-tarp"}},
	{name: "load up other", screen: ui.ScreenLoadUp, minute: 125, touch: []string{"act other"}},
	{name: "leaving aloud early", screen: ui.ScreenLeaving, minute: 60, touch: []string{"act read-aloud"}},
	{name: "stores", screen: ui.ScreenStores, minute: 60},
	{name: "stores doors", screen: ui.ScreenStores, minute: 60, touch: []string{"rig R41"}},
	{name: "stores slots", screen: ui.ScreenStores, minute: 60, touch: []string{"rig R41", "door store-L3"}},
	{name: "stores line", screen: ui.ScreenStores, minute: 60, touch: []string{"rig R41", "door store-L3", "piece R41-055", "act two"}},
	{name: "stores lift marks", screen: ui.ScreenStores, minute: 60, touch: []string{"act lift-marks"}},
	{name: "stores lift mark", screen: ui.ScreenStores, minute: 60, touch: []string{"rig R41", "door store-L1", "piece R41-001", "act marks"}},
	{name: "stores sets", screen: ui.ScreenStores, minute: 177, touch: []string{"act sets-dates"}},
	{name: "bring back orders", screen: ui.ScreenBringBack, minute: 180, touch: []string{"act restock-list", "act order-list"}},
	{name: "stores find", screen: ui.ScreenStores, minute: 60, touch: []string{"act find", "act s", "act t", "act a"}},
	{name: "glance stale", screen: ui.ScreenGlance, minute: 60, late: 9},
	{name: "tarp stale", screen: ui.ScreenTarp, minute: 60, late: 9},
	{name: "tarp read only", screen: ui.ScreenTarp, minute: 60, data: fileRead},
	{name: "load up read only", screen: ui.ScreenLoadUp, minute: 125, data: fileRead},
	{name: "tarp long names", screen: ui.ScreenTarp, minute: 60, data: fileLong},
	{name: "tarp long names picked", screen: ui.ScreenTarp, minute: 60, data: fileLong, touch: []string{"piece R41-138"}},
	{name: "glance long names", screen: ui.ScreenGlance, minute: 60, data: fileLong},
	{name: "load up long names", screen: ui.ScreenLoadUp, minute: 125, data: fileLong},
	{name: "leaving long names", screen: ui.ScreenLeaving, minute: 177, data: fileLong},
	{name: "release long names", screen: ui.ScreenGlance, minute: 91, data: fileLong, touch: []string{"act rig-leaving", "rig E42"}},
	{name: "bring back long names", screen: ui.ScreenBringBack, minute: 180, data: fileLong},
	{name: "look for it long names", screen: ui.ScreenLookFor, minute: 169, data: fileLong},
	{name: "stores line long names", screen: ui.ScreenStores, minute: 60, data: fileLong, touch: []string{"rig R41", "door store-L3", "piece R41-055"}},
	{name: "tarp 2,000 lines", screen: ui.ScreenTarp, minute: 60, data: fileMany},
	{name: "glance 2,000 lines", screen: ui.ScreenGlance, minute: 60, data: fileMany},
	{name: "load up 2,000 lines", screen: ui.ScreenLoadUp, minute: 125, data: fileMany},
	{name: "leaving 2,000 lines", screen: ui.ScreenLeaving, minute: 60, data: fileMany},
	{name: "stores find 2,000 lines", screen: ui.ScreenStores, minute: 60, data: fileMany, touch: []string{"act find", "act r", "act e", "act s"}},
	{name: "account", screen: ui.ScreenMore, minute: 60, touch: []string{"act account-R41"}},
	{name: "account lines", screen: ui.ScreenMore, minute: 60, touch: []string{"act account-R41", "act term-out"}},
	{name: "account entries", screen: ui.ScreenMore, minute: 177, touch: []string{"act account-R41", "act term-charging", "piece R41-006"}},
	{name: "trail", screen: ui.ScreenTrail, minute: 60},
	{name: "trail trip", screen: ui.ScreenTrail, minute: 60, touch: winterNight},
	{name: "trail miles", screen: ui.ScreenTrail, minute: 60, touch: []string{"act miles", "digit 1", "digit 5"}},
	{name: "trail load", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-load")},
	{name: "trail load heavy", screen: ui.ScreenTrail, minute: 60, touch: trailWith(winterNight, 3, "act step-load")},
	{name: "trail load line", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-load", "piece S44-010", "act fewer")},
	{name: "trail people", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-people", "member M04")},
	{name: "trail people heavy", screen: ui.ScreenTrail, minute: 60, touch: trailWith(winterNight, 3, "act step-people", "member M04")},
	{name: "trail limit", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-people", "member M04", "act limit", "act body", "digit 1", "digit 6", "digit 5")},
	{name: "trail check", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-check")},
	{name: "trail check count", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-check", "act here", "digit 4")},
	{name: "trail check anyway", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-check", "act anyway", "act first", "member M02")},
	{name: "trail carry", screen: ui.ScreenTrail, minute: 60, touch: trailWith(winterNight, 6, "act step-carry")},
	{name: "trail how", screen: ui.ScreenTrail, minute: 60, touch: trailWith(winterNight, 6, "act step-carry", "act how-out")},
	{name: "trail count before", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-count")},
	{name: "trail count", screen: ui.ScreenTrail, minute: 60, touch: trailWith(summerWalk, 6, "act step-check", "act anyway", "act first", "member M02", "act why-known", "act here", "digit 4", "digit done")},
	{name: "relief", screen: ui.ScreenMore, minute: 60, touch: []string{"act relieve"}},
}

// trailWith are the touches of a trip, of so many who walk, and what follows.
func trailWith(trip []string, people int, then ...string) []string {
	out := append(slices.Clone(trip), "act step-people")
	for _, m := range []string{"M04", "M05", "M07"}[:min(people, 3)] {
		out = append(out, "member "+m)
	}
	for range people - 3 {
		out = append(out, "act no-name")
	}
	return append(out, then...)
}
