package judge_test

import "testing"

func TestTheQuestionsOfThePutBackComeInTheirOrder(t *testing.T) {
	scripts(t, map[string]string{
		"the order of the reasons": `
			direct DRILL home>at:V1            -> ok straight_off
			stow DRILL 0 at:V1>home rig=R2     -> refused bad_row
			stow DRILL 2 at:V1>home rig=R2     -> refused wrong_rig
			stow_tagged DRILL at:V1>home rig=R2 -> refused wrong_rig
			stow DRILL 2 at:V1>home rig=R1     -> refused not_there
			tag DRILL read=bent                -> ok
			stow DRILL at:V1>home read=battery=full -> refused tagged
			repair DRILL                       -> ok
			stow_tagged DRILL at:V1>home       -> refused not_tagged
			stow DRILL at:V1>home read=unused  -> refused was_issued
			stow DRILL at:V1>home read=unused;battery=99 -> refused was_issued
			stow DRILL at:V1>home read=battery=full -> refused bad_reading
			stow DRILL at:V1>home read=battery=22 -> refused unanswered
			stow DRILL at:V1>home              -> refused unanswered
			stow DRILL at:V1>home read=battery=22;clean=yes -> refused gate
			: DRILL at:V1=1 open=- doubt=0                    # a refused row takes no readings
			stow DRILL at:V1>home read=battery=80;clean=yes -> ok
			: DRILL home=1 ready=1`,
		"a kit that is elsewhere": `
			pull BOX home>tarp                 -> ok two_person
			take_out PUNCH home>tarp           -> ok
			take_out SAW 2 home>at:V1          -> ok
			stow PUNCH tarp>kit:BOX read=clean=yes -> ok       # into its kit on the tarp
			take_out PUNCH home>tarp           -> ok
			hand BOX tarp>at:V1                -> ok
			stow PUNCH tarp>home read=clean=yes -> refused kit_away
			stow SAW at:V1>home                -> ok           # where the kit lies
			stow_tagged PUNCH tarp>home        -> refused kit_away`,
		"a closed slot": `
			pull STRUT home>tarp               -> ok
			pull DEEP home>tarp                -> ok
			stow DEEP tarp>home                -> refused blocked
			stow STRUT tarp>home               -> refused blocked
			unstow CRATE1 home>tarp            -> ok
			stow STRUT tarp>home               -> ok           # one end is enough
			stow DEEP tarp>home read=in_anyway -> warned blocked
			: DEEP home=1`,
		"in anyway goes with the rest of the reading": `
			pull DEEP home>tarp                -> ok
			tag DEEP                           -> ok
			stow_tagged DEEP tarp>home         -> refused blocked
			stow_tagged DEEP tarp>home read=bent -> refused blocked
			stow_tagged DEEP tarp>home read=in_anyway -> warned blocked
			: DEEP tags=1/0 ready=0`,
		"unused": `
			pull BOX home>tarp                 -> ok two_person
			stow BOX tarp>home read=unused     -> ok two_person
			pull BOX home>tarp                 -> ok two_person
			take_out SAW home>at:V1            -> ok
			stow BOX tarp>home read=unused     -> refused was_issued # what lives in it was past the tarp
			stow BOX tarp>home read=unused;as_is -> warned not_ready short_usable
			: BOX doubt=1 open=count
			pull BOX home>tarp                 -> ok
			open                               -> ok
			stow BOX tarp>home read=unused     -> refused was_issued # a check is open
			check BOX read=count=short         -> ok
			stow BOX tarp>home read=unused     -> ok short_usable`,
	})
}

func TestAReadingIsReadAsItIsWrittenOrRefused(t *testing.T) {
	table := map[string]string{}
	for reading, reply := range map[string]string{
		"battery=80": "ok", "battery=80.0": "ok", "battery=080": "ok", "battery=80.": "ok", "BATTERY=80": "ok",
		";battery=80;;": "ok", "battery=100": "ok", "battery=79.99": "warned low", "battery=.5": "warned low",
		"battery=0": "warned low", "battery=84%": "refused bad_reading", "battery=full": "refused bad_reading",
		"battery=100.1": "refused bad_reading", "battery=140": "refused bad_reading", "battery=-1": "refused bad_reading",
		"battery=1e1": "refused bad_reading", "battery=+80": "refused bad_reading", "battery=8.0.1": "refused bad_reading",
		"battery=.": "refused bad_reading", "battery=nan": "refused bad_reading", "battery=inf": "refused bad_reading",
		"battery=0x50": "refused bad_reading", "battery=8_0": "refused bad_reading", "battery==80": "refused bad_reading",
		"battery=80;battery=80": "refused bad_reading", "battery=80;battery=": "refused bad_reading",
		"battery=80;Battery=80": "refused bad_reading", "battery": "refused bad_reading", "=80": "refused bad_reading",
		"charge=80": "refused bad_reading", "charge=": "refused bad_reading", "battery=": "refused unanswered", "": "refused unanswered",
		"unused": "refused bad_reading", "as_is": "refused bad_reading", "clean=blood": "warned failed", "clean=YES": "ok",
		"clean=no": "warned failed", "clean=maybe": "refused bad_reading", "dry=no": "ok", "flow=3": "ok", "flow=101": "refused bad_reading",
		"oxygen=700;flow=9": "ok", "clean=no;battery=3": "warned failed low", "battery=80;clean=": "ok",
	} {
		table[reading] = "check DRILL read=" + reading + " -> " + reply
	}
	scripts(t, table)
	scripts(t, map[string]string{
		"the ids of checks in any case": `
			check CAN read=seal=yes            -> ok
			check CAN read=SEAL=no             -> warned failed
			: CAN open=Seal doubt=1
			override CAN by=CHIEF read=seal    -> ok
			pull CAN home>tarp                 -> ok
			stow CAN tarp>home read=seal=no;count=yes -> ok overridden
			stow CAN tarp>home read=unused;count= -> refused not_there`,
		"an item with nothing in it is not counted short": `
			pull CAN home>tarp                 -> ok
			stow CAN tarp>home read=seal=yes;count=short -> refused gate
			stow CAN tarp>home read=seal=yes;count=yes -> ok`,
		"a number without a figure passes always": `
			check METER read=battery=0         -> ok`,
		"run down": `
			check O2 read=oxygen=1950;flow=15  -> warned rundown
			check O2 read=oxygen=600;flow=15   -> warned low rundown
			check O2 read=oxygen=1950;flow=0   -> ok
			check O2 read=flow=15              -> ok
			check DRILL read=oxygen=1950;flow=15 -> ok`,
		"only a stow has words": `
			bag DRILL home>bagged              -> ok
			clean DRILL bagged>home read=as_is -> refused bad_reading
			clean DRILL bagged>home read=clean=yes;battery=90 -> ok
			: DRILL doubt=0 open=-`,
	})
}

func TestNobodyWavesThroughWhatMayNeverBe(t *testing.T) {
	scripts(t, map[string]string{
		"override": `
			override DRILL by=CHIEF read=oxygen -> refused bad_reading # not a check of the item
			override DRILL by=CHIEF read=battery;clean -> refused bad_reading
			override DRILL by=CHIEF            -> refused bad_reading
			override O2 by=CREW read=oxygen    -> refused no_override
			override DRILL by=CREW read=battery -> refused not_officer
			override DRILL by=NEIGH read=battery -> refused not_officer
			override DRILL by=NOBODY read=battery -> refused not_officer
			override DRILL by=CHIEF read=battery -> ok
			direct DRILL home>at:V1            -> ok straight_off
			stow DRILL at:V1>home read=battery=70 -> refused unanswered  # no answer is not waved through
			stow DRILL at:V1>home read=battery=70;clean=no -> refused gate
			stow DRILL at:V1>home read=battery=70;clean=yes -> ok overridden
			: DRILL home=1 doubt=1 open=battery ready=0
			check DRILL read=battery=90        -> ok
			: DRILL doubt=0 open=- ready=1`,
		"an answer that passes is never overridden": `
			override DRILL by=CHIEF read=battery -> ok
			pull DRILL home>tarp               -> ok
			stow DRILL tarp>home read=battery=90;clean=yes -> ok`,
		"an override stands for the scene": `
			override DRILL by=CHIEF read=battery -> ok
			pull DRILL home>tarp               -> ok
			open                               -> ok
			stow DRILL tarp>home read=battery=70;clean=yes -> refused gate`,
		"blood is never waved through": `
			override DRILL by=CHIEF read=clean -> ok
			pull DRILL home>tarp               -> ok
			stow DRILL tarp>home read=battery=90;clean=blood -> refused gate
			stow DRILL tarp>home read=battery=90;clean=blood;as_is -> warned not_ready out_of_service
			: DRILL tags=1/0 doubt=0 open=clean`,
		"an empty cylinder as it is": `
			pull BOX home>tarp                 -> ok two_person
			take_out BAG home>tarp             -> ok
			take_out O2 home>at:V1             -> ok
			stow O2 at:V1>home read=oxygen=700 -> refused gate   # its kit is on the tarp
			return O2 at:V1>tarp               -> ok
			stow O2 tarp>home read=oxygen=700  -> refused gate
			stow O2 tarp>home read=oxygen=700;as_is -> warned not_ready out_of_service
			: O2 tags=1/0
			stow BAG tarp>home                 -> warned not_fit
			stow BOX tarp>home read=count=yes  -> warned not_fit two_person`,
		"as it is": `
			pull DRILL home>tarp               -> ok
			stow DRILL tarp>home read=battery=22;as_is -> warned not_ready
			: DRILL doubt=1 tags=0/0 open=battery,clean
			pull ROPE home>tarp                -> ok
			stow ROPE tarp>home read=as_is     -> warned not_ready out_of_service
			: ROPE tags=1/0 open=rope
			pull LIGHT home>tarp               -> ok
			stow LIGHT tarp>home read=as_is    -> ok
			pull METER home>tarp               -> ok
			stow METER tarp>home read=battery=full;as_is -> refused bad_reading
			stow METER tarp>home read=battery=5;as_is -> ok`,
		"waved through and as it is": `
			override BLANKET by=CHIEF read=dry -> ok
			pull BLANKET 3 home>tarp           -> ok
			stow BLANKET 2 tarp>home read=dry=no;as_is -> warned not_ready overridden
			: BLANKET doubt=2 home=2 tarp=1`,
	})
}

func TestAKitCountsItself(t *testing.T) {
	scripts(t, map[string]string{
		"rule 27 and 28": `
			pull BOX home>tarp                 -> ok two_person
			stow BOX tarp>home read=count=short -> refused gate      # it is complete
			take_out MASK 5 home>tarp          -> ok
			stow BOX tarp>home read=count=yes  -> ok                 # consumables do not count
			pull BOX home>tarp                 -> ok
			take_out SAW home>tarp             -> ok
			stow BOX tarp>home read=count=no   -> refused gate
			stow BOX tarp>home read=count=short -> ok short_usable
			pull BOX home>tarp                 -> ok
			stow BOX tarp>home read=count=yes  -> ok short_usable
			pull BOX home>tarp                 -> ok
			take_out PUNCH home>tarp           -> ok
			stow BOX tarp>home read=count=yes  -> refused gate       # not usable
			stow BOX tarp>home read=count=short -> refused gate
			stow BOX tarp>home read=unused     -> ok                 # it never left the tarp`,
		"a kit inside counts with its own state": `
			pull BOX home>tarp                 -> ok two_person
			take_out O2 home>tarp              -> ok
			stow BOX tarp>home read=count=yes  -> refused gate
			stow O2 tarp>home read=oxygen=1200 -> ok
			stow BOX tarp>home read=count=yes  -> ok two_person`,
	})
}

func TestWhatCameHomeWithoutPassingIsNotReady(t *testing.T) {
	scripts(t, map[string]string{
		"by any verb": `
			direct DRILL home>at:V1            -> ok straight_off
			seen DRILL at:V1>home              -> warned log_was_wrong not_ready
			: DRILL doubt=1 open=battery,clean
			charge DRILL home>charging         -> ok
			recharge DRILL charging>home read=battery=90 -> warned not_ready
			: DRILL doubt=1 open=clean
			check DRILL read=clean=yes         -> ok
			: DRILL doubt=0 open=-
			lend DRILL home>with:MED9          -> ok
			bring_back DRILL with:MED9>home read=battery=90;clean=yes -> ok
			: DRILL ready=1`,
		"but not what never left the tarp": `
			pull DRILL home>tarp               -> ok
			seen DRILL tarp>home               -> warned log_was_wrong
			: DRILL ready=1`,
		"new pieces are": `
			use BLANKET home>used              -> warned not_consumable
			restock BLANKET used>home          -> ok
			: BLANKET doubt=0 past=yes`,
		"nor does a count make it past the tarp": `
			count DRILL 0                      -> warned short
			: DRILL past=no unexplained=1
			count DRILL 1                      -> warned came_back
			: DRILL past=no doubt=0`,
		"a cylinder that nobody read": `
			direct BOX home>at:V1              -> ok straight_off two_person
			check O2 read=oxygen=1500          -> ok
			move BOX at:V1>at:V2               -> ok two_person
			stow BOX at:V2>home read=count=yes -> ok two_person
			: O2 doubt=0
			direct BOX home>at:V1              -> ok straight_off two_person
			stow BOX at:V1>home read=count=yes -> warned unread_inside two_person
			: O2 doubt=1 open=oxygen
			: PUNCH doubt=0                                          # its check is neither a number nor never`,
		"a later failing answer undoes a passing one": `
			direct BOX home>at:V1              -> ok straight_off two_person
			check O2 read=oxygen=1500          -> ok
			check O2 read=oxygen=700           -> warned low
			stow BOX at:V1>home read=count=yes -> warned unread_inside two_person`,
		"the tarp is as good as home": `
			pull BOX home>tarp                 -> ok two_person
			check O2 read=oxygen=1500          -> ok
			hand BOX tarp>at:V1                -> ok two_person
			return BOX at:V1>tarp              -> ok two_person
			stow BOX tarp>home read=count=yes  -> warned unread_inside two_person`,
		"tagged ones are not in doubt": `
			direct DRILL home>at:V1            -> ok straight_off
			tag DRILL                          -> ok
			seen DRILL at:V1>home              -> warned log_was_wrong
			: DRILL tags=1/0 doubt=0 open=-`,
	})
}

func TestADriversWordBringsAllOfARigHome(t *testing.T) {
	scripts(t, map[string]string{
		"rule 18": `
			vouch rig=R1                       -> ok
			vouch rig=MED9                     -> refused bad_row
			vouch                              -> refused bad_row
			pull LIGHT home>tarp               -> ok
			vouch rig=R2                       -> ok
			vouch rig=R1                       -> warned by_word
			: LIGHT home=1
			direct DRILL home>at:V1            -> ok straight_off
			vouch rig=R1                       -> warned by_word not_ready
			: DRILL home=1 doubt=1`,
		"kits before what lives in them": `
			pull BOX home>tarp                 -> ok two_person
			take_out BAG home>tarp             -> ok
			take_out O2 home>tarp              -> ok
			lend LIGHT home>with:MED9          -> ok
			vouch rig=R1                       -> warned by_word
			: O2 home=1 doubt=0
			: BAG home=1
			: LIGHT with:MED9=1`,
		"a piece whose kit is away stays": `
			direct BOX home>at:V1              -> ok straight_off two_person
			take_out SAW home>tarp             -> ok
			lend BOX at:V1>with:MED9           -> ok
			vouch rig=R1                       -> warned kit_away
			: SAW tarp=1`,
	})
}
