// Written by `npm run generate` from the folders here. Do not edit.
import designCableCannotBe from "./design/cable-cannot-be.ts";
import designCableSizeUnusual from "./design/cable-size-unusual.ts";
import designCapacityUnknown from "./design/capacity-unknown.ts";
import designConductorBelowMinimum from "./design/conductor-below-minimum.ts";
import designCpcTooSmall from "./design/cpc-too-small.ts";
import designDeviceDoesNotExist from "./design/device-does-not-exist.ts";
import designDeviceOverCapacity from "./design/device-over-capacity.ts";
import designDeviceOversized from "./design/device-oversized.ts";
import designDeviceRatingMissing from "./design/device-rating-missing.ts";
import designDeviceRatingUnusual from "./design/device-rating-unusual.ts";
import designFloorArea from "./design/floor-area.ts";
import designFusedSpurRating from "./design/fused-spur-rating.ts";
import designLoadDisagrees from "./design/load-disagrees.ts";
import designLoadOverDevice from "./design/load-over-device.ts";
import designMethodAgainstRoute from "./design/method-against-route.ts";
import designRcboWithoutSensitivity from "./design/rcbo-without-sensitivity.ts";
import designRingCableSize from "./design/ring-cable-size.ts";
import designRingCapacity from "./design/ring-capacity.ts";
import designRingDevice from "./design/ring-device.ts";
import designRingHeavyLoad from "./design/ring-heavy-load.ts";
import designRouteNotStated from "./design/route-not-stated.ts";
import designSinglesOutsideContainment from "./design/singles-outside-containment.ts";
import designSocketRadialCable from "./design/socket-radial-cable.ts";
import languageDuplicateName from "./language/duplicate-name.ts";
import languageUnknownName from "./language/unknown-name.ts";
import loopBoardBelowUpstream from "./loop/board-below-upstream.ts";
import loopDesignLoopOverLimit from "./loop/design-loop-over-limit.ts";
import loopDisconnectionTooLong from "./loop/disconnection-too-long.ts";
import loopElectrodeOverLimit from "./loop/electrode-over-limit.ts";
import loopElectrodeUnstable from "./loop/electrode-unstable.ts";
import loopFeederLeftOut from "./loop/feeder-left-out.ts";
import loopLimitUnknown from "./loop/limit-unknown.ts";
import loopMaxZsWrong from "./loop/max-zs-wrong.ts";
import loopReadingIsALimit from "./loop/reading-is-a-limit.ts";
import loopReliesOnRcd from "./loop/relies-on-rcd.ts";
import loopTypeNarrowsLoop from "./loop/type-narrows-loop.ts";
import loopZeAboveDeclared from "./loop/ze-above-declared.ts";
import loopZeTextbook from "./loop/ze-textbook.ts";
import loopZeTooLow from "./loop/ze-too-low.ts";
import loopZsBelowBoard from "./loop/zs-below-board.ts";
import loopZsBelowConductors from "./loop/zs-below-conductors.ts";
import loopZsDisagrees from "./loop/zs-disagrees.ts";
import loopZsOverColdLimit from "./loop/zs-over-cold-limit.ts";
import loopZsOverLimit from "./loop/zs-over-limit.ts";
import loopZsOverRcdLimit from "./loop/zs-over-rcd-limit.ts";
import networkBoardUnfed from "./network/board-unfed.ts";
import networkFeederDisagrees from "./network/feeder-disagrees.ts";
import networkFeederLoop from "./network/feeder-loop.ts";
import networkFeederWithoutFeeds from "./network/feeder-without-feeds.ts";
import networkTwoFeeders from "./network/two-feeders.ts";
import type { Rule } from "./rule.ts";

export const rules: readonly Rule[] = [
  designCableCannotBe,
  designCableSizeUnusual,
  designCapacityUnknown,
  designConductorBelowMinimum,
  designCpcTooSmall,
  designDeviceDoesNotExist,
  designDeviceOverCapacity,
  designDeviceOversized,
  designDeviceRatingMissing,
  designDeviceRatingUnusual,
  designFloorArea,
  designFusedSpurRating,
  designLoadDisagrees,
  designLoadOverDevice,
  designMethodAgainstRoute,
  designRcboWithoutSensitivity,
  designRingCableSize,
  designRingCapacity,
  designRingDevice,
  designRingHeavyLoad,
  designRouteNotStated,
  designSinglesOutsideContainment,
  designSocketRadialCable,
  languageDuplicateName,
  languageUnknownName,
  loopBoardBelowUpstream,
  loopDesignLoopOverLimit,
  loopDisconnectionTooLong,
  loopElectrodeOverLimit,
  loopElectrodeUnstable,
  loopFeederLeftOut,
  loopLimitUnknown,
  loopMaxZsWrong,
  loopReadingIsALimit,
  loopReliesOnRcd,
  loopTypeNarrowsLoop,
  loopZeAboveDeclared,
  loopZeTextbook,
  loopZeTooLow,
  loopZsBelowBoard,
  loopZsBelowConductors,
  loopZsDisagrees,
  loopZsOverColdLimit,
  loopZsOverLimit,
  loopZsOverRcdLimit,
  networkBoardUnfed,
  networkFeederDisagrees,
  networkFeederLoop,
  networkFeederWithoutFeeds,
  networkTwoFeeders,
];
