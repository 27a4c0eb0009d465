// Written by `npm run generate` from the folders here. Do not edit.
import afddMissing from "./afdd/missing.ts";
import afddTestButtonMissing from "./afdd/test-button-missing.ts";
import containmentCircuitDivided from "./containment/circuit-divided.ts";
import containmentGroupingUnderstated from "./containment/grouping-understated.ts";
import containmentNotCalculated from "./containment/not-calculated.ts";
import containmentOverFull from "./containment/over-full.ts";
import containmentRouteDisagrees from "./containment/route-disagrees.ts";
import containmentRunNotStated from "./containment/run-not-stated.ts";
import containmentSharedCpcTooSmall from "./containment/shared-cpc-too-small.ts";
import containmentTooManyBends from "./containment/too-many-bends.ts";
import containmentVoltagesMixed from "./containment/voltages-mixed.ts";
import continuityBothRecorded from "./continuity/both-recorded.ts";
import continuityHighestNotRecorded from "./continuity/highest-not-recorded.ts";
import continuityLinesDiffer from "./continuity/lines-differ.ts";
import continuityMissing from "./continuity/missing.ts";
import continuityNegativeOrZero from "./continuity/negative-or-zero.ts";
import continuityNoProtectiveConductor from "./continuity/no-protective-conductor.ts";
import continuityOpen from "./continuity/open.ts";
import continuityPointAgainstLength from "./continuity/point-against-length.ts";
import continuityPointOpen from "./continuity/point-open.ts";
import continuityR1r2AgainstLength from "./continuity/r1r2-against-length.ts";
import continuityR2AgainstLength from "./continuity/r2-against-length.ts";
import continuityR2AgainstLoop from "./continuity/r2-against-loop.ts";
import continuityR2Ratio from "./continuity/r2-ratio.ts";
import continuityTooManyDigits from "./continuity/too-many-digits.ts";
import coordinationAssemblyBelowFault from "./coordination/assembly-below-fault.ts";
import coordinationBreakingCapacityExceeded from "./coordination/breaking-capacity-exceeded.ts";
import coordinationBusbarBelowDevice from "./coordination/busbar-below-device.ts";
import coordinationBusbarBelowSources from "./coordination/busbar-below-sources.ts";
import coordinationDevicePoles from "./coordination/device-poles.ts";
import coordinationFeederBelowCircuit from "./coordination/feeder-below-circuit.ts";
import coordinationMainSwitchPoles from "./coordination/main-switch-poles.ts";
import coordinationNeutralHarmonics from "./coordination/neutral-harmonics.ts";
import coordinationNoSelectivity from "./coordination/no-selectivity.ts";
import coordinationRcdBelowDevice from "./coordination/rcd-below-device.ts";
import coordinationSourcePoles from "./coordination/source-poles.ts";
import coordinationSwitchBelowDevice from "./coordination/switch-below-device.ts";
import coordinationTailsBelowCutout from "./coordination/tails-below-cutout.ts";
import coordinationTrunkingBelowFault from "./coordination/trunking-below-fault.ts";
import demandChargerInBoardDiversity from "./demand/charger-in-board-diversity.ts";
import demandChargerWithoutLoadControl from "./demand/charger-without-load-control.ts";
import demandLineAgainstName from "./demand/line-against-name.ts";
import demandLineNotStated from "./demand/line-not-stated.ts";
import demandOverBusbar from "./demand/over-busbar.ts";
import demandOverCutout from "./demand/over-cutout.ts";
import demandOverDevice from "./demand/over-device.ts";
import demandOverFeederLoad from "./demand/over-feeder-load.ts";
import demandOverMainSwitch from "./demand/over-main-switch.ts";
import demandOverRcd from "./demand/over-rcd.ts";
import demandStatedTooLow from "./demand/stated-too-low.ts";
import demandUnbalanced from "./demand/unbalanced.ts";
import designAlarmsShareCircuit from "./design/alarms-share-circuit.ts";
import designBuriedTooShallow from "./design/buried-too-shallow.ts";
import designBusbarFiguresMissing from "./design/busbar-figures-missing.ts";
import designCableDoesNotExist from "./design/cable-does-not-exist.ts";
import designCableNotForGround from "./design/cable-not-for-ground.ts";
import designCableSizeUnusual from "./design/cable-size-unusual.ts";
import designCapacityNotCalculated from "./design/capacity-not-calculated.ts";
import designChargerSharesCircuit from "./design/charger-shares-circuit.ts";
import designClassTwoWithSockets from "./design/class-two-with-sockets.ts";
import designConductorBelowMinimum from "./design/conductor-below-minimum.ts";
import designCpcTooSmall from "./design/cpc-too-small.ts";
import designCurrentNotStated from "./design/current-not-stated.ts";
import designDeviceDoesNotExist from "./design/device-does-not-exist.ts";
import designDeviceOverCapacity from "./design/device-over-capacity.ts";
import designDeviceOversized from "./design/device-oversized.ts";
import designDeviceRatingMissing from "./design/device-rating-missing.ts";
import designDeviceRatingUnusual from "./design/device-rating-unusual.ts";
import designEnclosureCombustible from "./design/enclosure-combustible.ts";
import designFloorAreaExceeded from "./design/floor-area-exceeded.ts";
import designFusedSpurRating from "./design/fused-spur-rating.ts";
import designGroundNotThere from "./design/ground-not-there.ts";
import designLampholderDevice from "./design/lampholder-device.ts";
import designLiftSharesCircuit from "./design/lift-shares-circuit.ts";
import designLoadDisagrees from "./design/load-disagrees.ts";
import designLoadOverCable from "./design/load-over-cable.ts";
import designLoadOverDevice from "./design/load-over-device.ts";
import designMethodAgainstRoute from "./design/method-against-route.ts";
import designMotorInputNotStated from "./design/motor-input-not-stated.ts";
import designMotorOverloadMissing from "./design/motor-overload-missing.ts";
import designNamedThreePhase from "./design/named-three-phase.ts";
import designNeutralBelowDevice from "./design/neutral-below-device.ts";
import designNeutralShared from "./design/neutral-shared.ts";
import designOverAnyCapacity from "./design/over-any-capacity.ts";
import designOwnFiguresDisordered from "./design/own-figures-disordered.ts";
import designParallelBranched from "./design/parallel-branched.ts";
import designParallelNotArranged from "./design/parallel-not-arranged.ts";
import designPassesAsRemembered from "./design/passes-as-remembered.ts";
import designRcboWithoutSensitivity from "./design/rcbo-without-sensitivity.ts";
import designRelayAboveLoad from "./design/relay-above-load.ts";
import designRelayBelowLoad from "./design/relay-below-load.ts";
import designRingCableSize from "./design/ring-cable-size.ts";
import designRingCapacity from "./design/ring-capacity.ts";
import designRingDevice from "./design/ring-device.ts";
import designRingHeavyLoad from "./design/ring-heavy-load.ts";
import designRouteNotStated from "./design/route-not-stated.ts";
import designSettingAboveRating from "./design/setting-above-rating.ts";
import designSingleCoreInSteel from "./design/single-core-in-steel.ts";
import designSinglesOutsideContainment from "./design/singles-outside-containment.ts";
import designSocketRadialCable from "./design/socket-radial-cable.ts";
import designSourceWithLoads from "./design/source-with-loads.ts";
import designTerminalsTooHot from "./design/terminals-too-hot.ts";
import designThreePhaseOnSinglePhase from "./design/three-phase-on-single-phase.ts";
import designTooManyDrivers from "./design/too-many-drivers.ts";
import designTripsOnStart from "./design/trips-on-start.ts";
import diagnosisReadingsDisagree from "./diagnosis/readings-disagree.ts";
import driftCopiedFromEarlier from "./drift/copied-from-earlier.ts";
import driftFaultCurrentChanged from "./drift/fault-current-changed.ts";
import driftInsulationFallen from "./drift/insulation-fallen.ts";
import driftRcdSlower from "./drift/rcd-slower.ts";
import driftResistanceFallen from "./drift/resistance-fallen.ts";
import driftResistanceRisen from "./drift/resistance-risen.ts";
import driftRetestIncomplete from "./drift/retest-incomplete.ts";
import dropFeederUsesAllowance from "./drop/feeder-uses-allowance.ts";
import dropMotorStart from "./drop/motor-start.ts";
import dropOverLimit from "./drop/over-limit.ts";
import energyLetThroughTooHigh from "./energy/let-through-too-high.ts";
import energyLiveConductorTooThin from "./energy/live-conductor-too-thin.ts";
import energyStandbyCpcTooSmall from "./energy/standby-cpc-too-small.ts";
import energyStandbyLiveConductorTooThin from "./energy/standby-live-conductor-too-thin.ts";
import faultAboveDeclared from "./fault/above-declared.ts";
import faultBelowFeeder from "./fault/below-feeder.ts";
import faultBreakingCapacityExceeded from "./fault/breaking-capacity-exceeded.ts";
import faultBreakingCapacityMissing from "./fault/breaking-capacity-missing.ts";
import faultCurrentMissing from "./fault/current-missing.ts";
import faultDisagreesWithLoop from "./fault/disagrees-with-loop.ts";
import faultLargerNotRecorded from "./fault/larger-not-recorded.ts";
import faultOnePhaseFigure from "./fault/one-phase-figure.ts";
import faultRisesDownstream from "./fault/rises-downstream.ts";
import faultShortCircuitFromLoop from "./fault/short-circuit-from-loop.ts";
import faultStandbyBreakingCapacity from "./fault/standby-breaking-capacity.ts";
import inspectionCircuitNotTested from "./inspection/circuit-not-tested.ts";
import inspectionDaysDisagree from "./inspection/days-disagree.ts";
import inspectionEarlierTestsSigned from "./inspection/earlier-tests-signed.ts";
import inspectionExistingNotAssessed from "./inspection/existing-not-assessed.ts";
import inspectionIncomplete from "./inspection/incomplete.ts";
import inspectionItemDisagrees from "./inspection/item-disagrees.ts";
import inspectionLimitationNotAgreed from "./inspection/limitation-not-agreed.ts";
import inspectionLimitationWithoutCause from "./inspection/limitation-without-cause.ts";
import inspectionNextTooLate from "./inspection/next-too-late.ts";
import inspectionNothingTested from "./inspection/nothing-tested.ts";
import inspectionOutcomeContradicted from "./inspection/outcome-contradicted.ts";
import inspectionUnknownCircuit from "./inspection/unknown-circuit.ts";
import instrumentBeyondRange from "./instrument/beyond-range.ts";
import instrumentCalibrationLapsed from "./instrument/calibration-lapsed.ts";
import instrumentNoDue from "./instrument/no-due.ts";
import instrumentNoSerial from "./instrument/no-serial.ts";
import instrumentNotCapable from "./instrument/not-capable.ts";
import instrumentNotNamed from "./instrument/not-named.ts";
import instrumentTestBeforeCalibration from "./instrument/test-before-calibration.ts";
import instrumentWithinUncertainty from "./instrument/within-uncertainty.ts";
import insulationAllLow from "./insulation/all-low.ts";
import insulationBelowMinimum from "./insulation/below-minimum.ts";
import insulationBoardBelowMinimum from "./insulation/board-below-minimum.ts";
import insulationBoardDisagrees from "./insulation/board-disagrees.ts";
import insulationDifferingRanges from "./insulation/differing-ranges.ts";
import insulationElectronicsNotDisconnected from "./insulation/electronics-not-disconnected.ts";
import insulationLowOnNew from "./insulation/low-on-new.ts";
import insulationMissing from "./insulation/missing.ts";
import insulationNotTestedWithEquipment from "./insulation/not-tested-with-equipment.ts";
import insulationOutlier from "./insulation/outlier.ts";
import insulationPairMissing from "./insulation/pair-missing.ts";
import insulationSpdNotDisconnected from "./insulation/spd-not-disconnected.ts";
import insulationTestVoltage from "./insulation/test-voltage.ts";
import insulationZero from "./insulation/zero.ts";
import languageDuplicateName from "./language/duplicate-name.ts";
import languageUnknownName from "./language/unknown-name.ts";
import liveBeforeDead from "./live/before-dead.ts";
import liveBeforeInstallation from "./live/before-installation.ts";
import liveFunctionFailed from "./live/function-failed.ts";
import liveNotTested from "./live/not-tested.ts";
import livePhaseSequenceMissing from "./live/phase-sequence-missing.ts";
import livePhaseSequenceReversed from "./live/phase-sequence-reversed.ts";
import liveVoltageOutside from "./live/voltage-outside.ts";
import liveZsMissing from "./live/zs-missing.ts";
import loopBoardBelowUpstream from "./loop/board-below-upstream.ts";
import loopBoardDisagrees from "./loop/board-disagrees.ts";
import loopBoardOffScale from "./loop/board-off-scale.ts";
import loopCpcOpen from "./loop/cpc-open.ts";
import loopDesignLoopOverLimit from "./loop/design-loop-over-limit.ts";
import loopDisconnectionTooLong from "./loop/disconnection-too-long.ts";
import loopElectrodeOverLimit from "./loop/electrode-over-limit.ts";
import loopElectrodeUnstable from "./loop/electrode-unstable.ts";
import loopExpectedOverLimit from "./loop/expected-over-limit.ts";
import loopFeederLeftOut from "./loop/feeder-left-out.ts";
import loopHighestNotRecorded from "./loop/highest-not-recorded.ts";
import loopItSystemNotChecked from "./loop/it-system-not-checked.ts";
import loopLimitUnknown from "./loop/limit-unknown.ts";
import loopLowForTt from "./loop/low-for-tt.ts";
import loopMaxZsWrong from "./loop/max-zs-wrong.ts";
import loopOverAnyLimit from "./loop/over-any-limit.ts";
import loopPointOverLimit from "./loop/point-over-limit.ts";
import loopReadingIsALimit from "./loop/reading-is-a-limit.ts";
import loopReliesOnRcd from "./loop/relies-on-rcd.ts";
import loopStandbyOverLimit from "./loop/standby-over-limit.ts";
import loopTypeBWouldDo from "./loop/type-b-would-do.ts";
import loopZeAboveDeclared from "./loop/ze-above-declared.ts";
import loopZeTextbook from "./loop/ze-textbook.ts";
import loopZeTooLow from "./loop/ze-too-low.ts";
import loopZsAgainstLength from "./loop/zs-against-length.ts";
import loopZsBelowBoard from "./loop/zs-below-board.ts";
import loopZsBelowConductors from "./loop/zs-below-conductors.ts";
import loopZsBelowElectrode from "./loop/zs-below-electrode.ts";
import loopZsDisagrees from "./loop/zs-disagrees.ts";
import loopZsOverColdLimit from "./loop/zs-over-cold-limit.ts";
import loopZsOverLimit from "./loop/zs-over-limit.ts";
import loopZsOverRcdLimit from "./loop/zs-over-rcd-limit.ts";
import loopZsOverWrittenLimit from "./loop/zs-over-written-limit.ts";
import networkBoardSupplyNotStated from "./network/board-supply-not-stated.ts";
import networkCircularFeed from "./network/circular-feed.ts";
import networkCombinedConductor from "./network/combined-conductor.ts";
import networkElectrodesShareDevice from "./network/electrodes-share-device.ts";
import networkFeederDisagrees from "./network/feeder-disagrees.ts";
import networkFeederWithoutFeeds from "./network/feeder-without-feeds.ts";
import networkIslandWithoutElectrode from "./network/island-without-electrode.ts";
import networkMeasureNotJudged from "./network/measure-not-judged.ts";
import networkStandbyNotEarthed from "./network/standby-not-earthed.ts";
import networkStandbyUnknownWay from "./network/standby-unknown-way.ts";
import networkThreeFromOne from "./network/three-from-one.ts";
import networkTwoFeeders from "./network/two-feeders.ts";
import networkVoltageNotJudged from "./network/voltage-not-judged.ts";
import networkVoltageNotNominal from "./network/voltage-not-nominal.ts";
import placeAgriculturalWithoutRcd from "./place/agricultural-without-rcd.ts";
import placeBondingNotStated from "./place/bonding-not-stated.ts";
import placeBondingOmitted from "./place/bonding-omitted.ts";
import placeCableNotAllowed from "./place/cable-not-allowed.ts";
import placeCaravanWithoutRcd from "./place/caravan-without-rcd.ts";
import placeChargerCombinedEarth from "./place/charger-combined-earth.ts";
import placeChassisNotBonded from "./place/chassis-not-bonded.ts";
import placeCombinedEarth from "./place/combined-earth.ts";
import placeConstructionWithoutRcd from "./place/construction-without-rcd.ts";
import placeDistanceNotStated from "./place/distance-not-stated.ts";
import placeEquipmentNotAllowed from "./place/equipment-not-allowed.ts";
import placeFansShareRcd from "./place/fans-share-rcd.ts";
import placeFarmFeederWithoutRcd from "./place/farm-feeder-without-rcd.ts";
import placeFireRiskWithoutRcd from "./place/fire-risk-without-rcd.ts";
import placeIpCodeNotStated from "./place/ip-code-not-stated.ts";
import placeIpCodeTooLow from "./place/ip-code-too-low.ts";
import placeMarinaWithoutRcd from "./place/marina-without-rcd.ts";
import placeMedicalNotChecked from "./place/medical-not-checked.ts";
import placeMobileUnitWithoutRcd from "./place/mobile-unit-without-rcd.ts";
import placePoolByName from "./place/pool-by-name.ts";
import placePoolWithoutRcd from "./place/pool-without-rcd.ts";
import placeSaunaWithoutRcd from "./place/sauna-without-rcd.ts";
import placeSeveralSockets from "./place/several-sockets.ts";
import placeShowWithoutOriginRcd from "./place/show-without-origin-rcd.ts";
import placeShowWithoutRcd from "./place/show-without-rcd.ts";
import placeSocketSharesRcd from "./place/socket-shares-rcd.ts";
import placeSocketsNearBath from "./place/sockets-near-bath.ts";
import placeTouchVoltage from "./place/touch-voltage.ts";
import placeZoneNotSelv from "./place/zone-not-selv.ts";
import polarityMissing from "./polarity/missing.ts";
import polarityWrongUpstream from "./polarity/wrong-upstream.ts";
import polarityWrong from "./polarity/wrong.ts";
import populationAllNearLimit from "./population/all-near-limit.ts";
import populationCalculatedFromLength from "./population/calculated-from-length.ts";
import populationDemandCopied from "./population/demand-copied.ts";
import populationEqualPairs from "./population/equal-pairs.ts";
import populationEqualReadings from "./population/equal-readings.ts";
import populationEqualTripTimes from "./population/equal-trip-times.ts";
import populationLeadsNotNulled from "./population/leads-not-nulled.ts";
import populationRoundFigures from "./population/round-figures.ts";
import populationUnlikeNeighbours from "./population/unlike-neighbours.ts";
import populationWorkedBackwards from "./population/worked-backwards.ts";
import protectiveBondingMissing from "./protective/bonding-missing.ts";
import protectiveBondingNotStated from "./protective/bonding-not-stated.ts";
import protectiveBondingNotTested from "./protective/bonding-not-tested.ts";
import protectiveBondingReadsHigh from "./protective/bonding-reads-high.ts";
import protectiveBondingSizeMissing from "./protective/bonding-size-missing.ts";
import protectiveBondingTooSmall from "./protective/bonding-too-small.ts";
import protectiveEarthingConductorTooSmall from "./protective/earthing-conductor-too-small.ts";
import protectiveEarthingNotStated from "./protective/earthing-not-stated.ts";
import protectiveEarthingReadsHigh from "./protective/earthing-reads-high.ts";
import protectiveHighConductorCurrent from "./protective/high-conductor-current.ts";
import protectiveNotCalculated from "./protective/not-calculated.ts";
import protectiveOpen from "./protective/open.ts";
import protectiveOutbuildingBonding from "./protective/outbuilding-bonding.ts";
import protectiveSeparateBelowMinimum from "./protective/separate-below-minimum.ts";
import protectiveSteelNotContinuous from "./protective/steel-not-continuous.ts";
import protectiveSupplementaryReadsHigh from "./protective/supplementary-reads-high.ts";
import protectiveSupplementaryTooSmall from "./protective/supplementary-too-small.ts";
import rcdAlarmsShareRcd from "./rcd/alarms-share-rcd.ts";
import rcdChargerDcDetection from "./rcd/charger-dc-detection.ts";
import rcdChargerPoles from "./rcd/charger-poles.ts";
import rcdChargerSharesRcd from "./rcd/charger-shares-rcd.ts";
import rcdConcealedDepthNotStated from "./rcd/concealed-depth-not-stated.ts";
import rcdDelayedForAdditionalProtection from "./rcd/delayed-for-additional-protection.ts";
import rcdInverterDirectCurrent from "./rcd/inverter-direct-current.ts";
import rcdLeakageTooHigh from "./rcd/leakage-too-high.ts";
import rcdMissingForCharger from "./rcd/missing-for-charger.ts";
import rcdMissingForConcealed from "./rcd/missing-for-concealed.ts";
import rcdMissingForFloorHeating from "./rcd/missing-for-floor-heating.ts";
import rcdMissingForLighting from "./rcd/missing-for-lighting.ts";
import rcdMissingForPublicLighting from "./rcd/missing-for-public-lighting.ts";
import rcdMissingForSockets from "./rcd/missing-for-sockets.ts";
import rcdMissingInBathroom from "./rcd/missing-in-bathroom.ts";
import rcdMissingInMetalFrame from "./rcd/missing-in-metal-frame.ts";
import rcdMissingInTt from "./rcd/missing-in-tt.ts";
import rcdMissingOutdoors from "./rcd/missing-outdoors.ts";
import rcdNoSelectivity from "./rcd/no-selectivity.ts";
import rcdOmittedWithoutAssessment from "./rcd/omitted-without-assessment.ts";
import rcdProtectsEverything from "./rcd/protects-everything.ts";
import rcdPublicReachNotStated from "./rcd/public-reach-not-stated.ts";
import rcdSensitivityTooHigh from "./rcd/sensitivity-too-high.ts";
import rcdSensitivityUnusual from "./rcd/sensitivity-unusual.ts";
import rcdSourceSharesRcd from "./rcd/source-shares-rcd.ts";
import rcdTestButtonFailed from "./rcd/test-button-failed.ts";
import rcdTestButtonMissing from "./rcd/test-button-missing.ts";
import rcdTestInstrumentType from "./rcd/test-instrument-type.ts";
import rcdTestMissing from "./rcd/test-missing.ts";
import rcdTestNoDevice from "./rcd/test-no-device.ts";
import rcdTestOtherRcd from "./rcd/test-other-rcd.ts";
import rcdTestSensitivity from "./rcd/test-sensitivity.ts";
import rcdTestTripCurrent from "./rcd/test-trip-current.ts";
import rcdTestUnnamed from "./rcd/test-unnamed.ts";
import rcdTestWithoutResult from "./rcd/test-without-result.ts";
import rcdTimeColumnsSwapped from "./rcd/time-columns-swapped.ts";
import rcdTimeDelayedTooFast from "./rcd/time-delayed-too-fast.ts";
import rcdTimeOverLimit from "./rcd/time-over-limit.ts";
import rcdTimeTooShort from "./rcd/time-too-short.ts";
import rcdTimeWithoutMultiple from "./rcd/time-without-multiple.ts";
import rcdTimeZero from "./rcd/time-zero.ts";
import rcdTrippedAtHalf from "./rcd/tripped-at-half.ts";
import rcdTypeNotStated from "./rcd/type-not-stated.ts";
import rcdTypeUnsuitable from "./rcd/type-unsuitable.ts";
import rcdUnidirectionalWithSource from "./rcd/unidirectional-with-source.ts";
import rcdUpstreamBlindedByDc from "./rcd/upstream-blinded-by-dc.ts";
import recordAnswerWithoutQuery from "./record/answer-without-query.ts";
import recordCableIncomplete from "./record/cable-incomplete.ts";
import recordChangedSinceTests from "./record/changed-since-tests.ts";
import recordDetailAgainstField from "./record/detail-against-field.ts";
import recordEditionSuperseded from "./record/edition-superseded.ts";
import recordEditionUnverified from "./record/edition-unverified.ts";
import recordLimitationOnNew from "./record/limitation-on-new.ts";
import recordLimitations from "./record/limitations.ts";
import recordNoCable from "./record/no-cable.ts";
import recordNoDescription from "./record/no-description.ts";
import recordNoDevice from "./record/no-device.ts";
import recordNoKind from "./record/no-kind.ts";
import recordNoLength from "./record/no-length.ts";
import recordNoStage from "./record/no-stage.ts";
import recordNoStandard from "./record/no-standard.ts";
import recordNotApplicable from "./record/not-applicable.ts";
import recordNotSigned from "./record/not-signed.ts";
import recordNoticeMissing from "./record/notice-missing.ts";
import recordOpenQuery from "./record/open-query.ts";
import recordPolarityDisagrees from "./record/polarity-disagrees.ts";
import recordServesNotStated from "./record/serves-not-stated.ts";
import recordSignedBeforeTests from "./record/signed-before-tests.ts";
import recordSignedOutOfOrder from "./record/signed-out-of-order.ts";
import recordSpareInUse from "./record/spare-in-use.ts";
import recordStageBehind from "./record/stage-behind.ts";
import recordSupplyIncomplete from "./record/supply-incomplete.ts";
import recordTestsBeforeEdition from "./record/tests-before-edition.ts";
import recordTestsContradict from "./record/tests-contradict.ts";
import recordUnknownEdition from "./record/unknown-edition.ts";
import ringBridged from "./ring/bridged.ts";
import ringCountDisagrees from "./ring/count-disagrees.ts";
import ringCpcRatio from "./ring/cpc-ratio.ts";
import ringEndsAgainstLength from "./ring/ends-against-length.ts";
import ringEndsDiffer from "./ring/ends-differ.ts";
import ringEndsMissing from "./ring/ends-missing.ts";
import ringEndsOnRadial from "./ring/ends-on-radial.ts";
import ringEndsWorkedBack from "./ring/ends-worked-back.ts";
import ringIdenticalReadings from "./ring/identical-readings.ts";
import ringLegsSwappedBetweenRings from "./ring/legs-swapped-between-rings.ts";
import ringLinkMissing from "./ring/link-missing.ts";
import ringLinksNotCrossed from "./ring/links-not-crossed.ts";
import ringLongRing from "./ring/long-ring.ts";
import ringOpenConductor from "./ring/open-conductor.ts";
import ringPointOpen from "./ring/point-open.ts";
import ringPointReading from "./ring/point-reading.ts";
import ringPointTwice from "./ring/point-twice.ts";
import ringPointsMissing from "./ring/points-missing.ts";
import ringPoorContact from "./ring/poor-contact.ts";
import ringR1r2AgainstRing from "./ring/r1r2-against-ring.ts";
import ringR1r2FromEnds from "./ring/r1r2-from-ends.ts";
import ringRunDetached from "./ring/run-detached.ts";
import ringRunNotClosed from "./ring/run-not-closed.ts";
import ringSpurOffSpur from "./ring/spur-off-spur.ts";
import ringSpurTooLong from "./ring/spur-too-long.ts";
import ringTooManySpurs from "./ring/too-many-spurs.ts";
import surgeConductorTooSmall from "./surge/conductor-too-small.ts";
import surgeLeadsTooLong from "./surge/leads-too-long.ts";
import surgeNotStated from "./surge/not-stated.ts";
import surgeOmittedWithSafetyService from "./surge/omitted-with-safety-service.ts";
import surgeOmittedWithoutReason from "./surge/omitted-without-reason.ts";
import type { Rule } from "./frame/rule.ts";

export const rules: readonly Rule[] = [
  afddMissing,
  afddTestButtonMissing,
  containmentCircuitDivided,
  containmentGroupingUnderstated,
  containmentNotCalculated,
  containmentOverFull,
  containmentRouteDisagrees,
  containmentRunNotStated,
  containmentSharedCpcTooSmall,
  containmentTooManyBends,
  containmentVoltagesMixed,
  continuityBothRecorded,
  continuityHighestNotRecorded,
  continuityLinesDiffer,
  continuityMissing,
  continuityNegativeOrZero,
  continuityNoProtectiveConductor,
  continuityOpen,
  continuityPointAgainstLength,
  continuityPointOpen,
  continuityR1r2AgainstLength,
  continuityR2AgainstLength,
  continuityR2AgainstLoop,
  continuityR2Ratio,
  continuityTooManyDigits,
  coordinationAssemblyBelowFault,
  coordinationBreakingCapacityExceeded,
  coordinationBusbarBelowDevice,
  coordinationBusbarBelowSources,
  coordinationDevicePoles,
  coordinationFeederBelowCircuit,
  coordinationMainSwitchPoles,
  coordinationNeutralHarmonics,
  coordinationNoSelectivity,
  coordinationRcdBelowDevice,
  coordinationSourcePoles,
  coordinationSwitchBelowDevice,
  coordinationTailsBelowCutout,
  coordinationTrunkingBelowFault,
  demandChargerInBoardDiversity,
  demandChargerWithoutLoadControl,
  demandLineAgainstName,
  demandLineNotStated,
  demandOverBusbar,
  demandOverCutout,
  demandOverDevice,
  demandOverFeederLoad,
  demandOverMainSwitch,
  demandOverRcd,
  demandStatedTooLow,
  demandUnbalanced,
  designAlarmsShareCircuit,
  designBuriedTooShallow,
  designBusbarFiguresMissing,
  designCableDoesNotExist,
  designCableNotForGround,
  designCableSizeUnusual,
  designCapacityNotCalculated,
  designChargerSharesCircuit,
  designClassTwoWithSockets,
  designConductorBelowMinimum,
  designCpcTooSmall,
  designCurrentNotStated,
  designDeviceDoesNotExist,
  designDeviceOverCapacity,
  designDeviceOversized,
  designDeviceRatingMissing,
  designDeviceRatingUnusual,
  designEnclosureCombustible,
  designFloorAreaExceeded,
  designFusedSpurRating,
  designGroundNotThere,
  designLampholderDevice,
  designLiftSharesCircuit,
  designLoadDisagrees,
  designLoadOverCable,
  designLoadOverDevice,
  designMethodAgainstRoute,
  designMotorInputNotStated,
  designMotorOverloadMissing,
  designNamedThreePhase,
  designNeutralBelowDevice,
  designNeutralShared,
  designOverAnyCapacity,
  designOwnFiguresDisordered,
  designParallelBranched,
  designParallelNotArranged,
  designPassesAsRemembered,
  designRcboWithoutSensitivity,
  designRelayAboveLoad,
  designRelayBelowLoad,
  designRingCableSize,
  designRingCapacity,
  designRingDevice,
  designRingHeavyLoad,
  designRouteNotStated,
  designSettingAboveRating,
  designSingleCoreInSteel,
  designSinglesOutsideContainment,
  designSocketRadialCable,
  designSourceWithLoads,
  designTerminalsTooHot,
  designThreePhaseOnSinglePhase,
  designTooManyDrivers,
  designTripsOnStart,
  diagnosisReadingsDisagree,
  driftCopiedFromEarlier,
  driftFaultCurrentChanged,
  driftInsulationFallen,
  driftRcdSlower,
  driftResistanceFallen,
  driftResistanceRisen,
  driftRetestIncomplete,
  dropFeederUsesAllowance,
  dropMotorStart,
  dropOverLimit,
  energyLetThroughTooHigh,
  energyLiveConductorTooThin,
  energyStandbyCpcTooSmall,
  energyStandbyLiveConductorTooThin,
  faultAboveDeclared,
  faultBelowFeeder,
  faultBreakingCapacityExceeded,
  faultBreakingCapacityMissing,
  faultCurrentMissing,
  faultDisagreesWithLoop,
  faultLargerNotRecorded,
  faultOnePhaseFigure,
  faultRisesDownstream,
  faultShortCircuitFromLoop,
  faultStandbyBreakingCapacity,
  inspectionCircuitNotTested,
  inspectionDaysDisagree,
  inspectionEarlierTestsSigned,
  inspectionExistingNotAssessed,
  inspectionIncomplete,
  inspectionItemDisagrees,
  inspectionLimitationNotAgreed,
  inspectionLimitationWithoutCause,
  inspectionNextTooLate,
  inspectionNothingTested,
  inspectionOutcomeContradicted,
  inspectionUnknownCircuit,
  instrumentBeyondRange,
  instrumentCalibrationLapsed,
  instrumentNoDue,
  instrumentNoSerial,
  instrumentNotCapable,
  instrumentNotNamed,
  instrumentTestBeforeCalibration,
  instrumentWithinUncertainty,
  insulationAllLow,
  insulationBelowMinimum,
  insulationBoardBelowMinimum,
  insulationBoardDisagrees,
  insulationDifferingRanges,
  insulationElectronicsNotDisconnected,
  insulationLowOnNew,
  insulationMissing,
  insulationNotTestedWithEquipment,
  insulationOutlier,
  insulationPairMissing,
  insulationSpdNotDisconnected,
  insulationTestVoltage,
  insulationZero,
  languageDuplicateName,
  languageUnknownName,
  liveBeforeDead,
  liveBeforeInstallation,
  liveFunctionFailed,
  liveNotTested,
  livePhaseSequenceMissing,
  livePhaseSequenceReversed,
  liveVoltageOutside,
  liveZsMissing,
  loopBoardBelowUpstream,
  loopBoardDisagrees,
  loopBoardOffScale,
  loopCpcOpen,
  loopDesignLoopOverLimit,
  loopDisconnectionTooLong,
  loopElectrodeOverLimit,
  loopElectrodeUnstable,
  loopExpectedOverLimit,
  loopFeederLeftOut,
  loopHighestNotRecorded,
  loopItSystemNotChecked,
  loopLimitUnknown,
  loopLowForTt,
  loopMaxZsWrong,
  loopOverAnyLimit,
  loopPointOverLimit,
  loopReadingIsALimit,
  loopReliesOnRcd,
  loopStandbyOverLimit,
  loopTypeBWouldDo,
  loopZeAboveDeclared,
  loopZeTextbook,
  loopZeTooLow,
  loopZsAgainstLength,
  loopZsBelowBoard,
  loopZsBelowConductors,
  loopZsBelowElectrode,
  loopZsDisagrees,
  loopZsOverColdLimit,
  loopZsOverLimit,
  loopZsOverRcdLimit,
  loopZsOverWrittenLimit,
  networkBoardSupplyNotStated,
  networkCircularFeed,
  networkCombinedConductor,
  networkElectrodesShareDevice,
  networkFeederDisagrees,
  networkFeederWithoutFeeds,
  networkIslandWithoutElectrode,
  networkMeasureNotJudged,
  networkStandbyNotEarthed,
  networkStandbyUnknownWay,
  networkThreeFromOne,
  networkTwoFeeders,
  networkVoltageNotJudged,
  networkVoltageNotNominal,
  placeAgriculturalWithoutRcd,
  placeBondingNotStated,
  placeBondingOmitted,
  placeCableNotAllowed,
  placeCaravanWithoutRcd,
  placeChargerCombinedEarth,
  placeChassisNotBonded,
  placeCombinedEarth,
  placeConstructionWithoutRcd,
  placeDistanceNotStated,
  placeEquipmentNotAllowed,
  placeFansShareRcd,
  placeFarmFeederWithoutRcd,
  placeFireRiskWithoutRcd,
  placeIpCodeNotStated,
  placeIpCodeTooLow,
  placeMarinaWithoutRcd,
  placeMedicalNotChecked,
  placeMobileUnitWithoutRcd,
  placePoolByName,
  placePoolWithoutRcd,
  placeSaunaWithoutRcd,
  placeSeveralSockets,
  placeShowWithoutOriginRcd,
  placeShowWithoutRcd,
  placeSocketSharesRcd,
  placeSocketsNearBath,
  placeTouchVoltage,
  placeZoneNotSelv,
  polarityMissing,
  polarityWrongUpstream,
  polarityWrong,
  populationAllNearLimit,
  populationCalculatedFromLength,
  populationDemandCopied,
  populationEqualPairs,
  populationEqualReadings,
  populationEqualTripTimes,
  populationLeadsNotNulled,
  populationRoundFigures,
  populationUnlikeNeighbours,
  populationWorkedBackwards,
  protectiveBondingMissing,
  protectiveBondingNotStated,
  protectiveBondingNotTested,
  protectiveBondingReadsHigh,
  protectiveBondingSizeMissing,
  protectiveBondingTooSmall,
  protectiveEarthingConductorTooSmall,
  protectiveEarthingNotStated,
  protectiveEarthingReadsHigh,
  protectiveHighConductorCurrent,
  protectiveNotCalculated,
  protectiveOpen,
  protectiveOutbuildingBonding,
  protectiveSeparateBelowMinimum,
  protectiveSteelNotContinuous,
  protectiveSupplementaryReadsHigh,
  protectiveSupplementaryTooSmall,
  rcdAlarmsShareRcd,
  rcdChargerDcDetection,
  rcdChargerPoles,
  rcdChargerSharesRcd,
  rcdConcealedDepthNotStated,
  rcdDelayedForAdditionalProtection,
  rcdInverterDirectCurrent,
  rcdLeakageTooHigh,
  rcdMissingForCharger,
  rcdMissingForConcealed,
  rcdMissingForFloorHeating,
  rcdMissingForLighting,
  rcdMissingForPublicLighting,
  rcdMissingForSockets,
  rcdMissingInBathroom,
  rcdMissingInMetalFrame,
  rcdMissingInTt,
  rcdMissingOutdoors,
  rcdNoSelectivity,
  rcdOmittedWithoutAssessment,
  rcdProtectsEverything,
  rcdPublicReachNotStated,
  rcdSensitivityTooHigh,
  rcdSensitivityUnusual,
  rcdSourceSharesRcd,
  rcdTestButtonFailed,
  rcdTestButtonMissing,
  rcdTestInstrumentType,
  rcdTestMissing,
  rcdTestNoDevice,
  rcdTestOtherRcd,
  rcdTestSensitivity,
  rcdTestTripCurrent,
  rcdTestUnnamed,
  rcdTestWithoutResult,
  rcdTimeColumnsSwapped,
  rcdTimeDelayedTooFast,
  rcdTimeOverLimit,
  rcdTimeTooShort,
  rcdTimeWithoutMultiple,
  rcdTimeZero,
  rcdTrippedAtHalf,
  rcdTypeNotStated,
  rcdTypeUnsuitable,
  rcdUnidirectionalWithSource,
  rcdUpstreamBlindedByDc,
  recordAnswerWithoutQuery,
  recordCableIncomplete,
  recordChangedSinceTests,
  recordDetailAgainstField,
  recordEditionSuperseded,
  recordEditionUnverified,
  recordLimitationOnNew,
  recordLimitations,
  recordNoCable,
  recordNoDescription,
  recordNoDevice,
  recordNoKind,
  recordNoLength,
  recordNoStage,
  recordNoStandard,
  recordNotApplicable,
  recordNotSigned,
  recordNoticeMissing,
  recordOpenQuery,
  recordPolarityDisagrees,
  recordServesNotStated,
  recordSignedBeforeTests,
  recordSignedOutOfOrder,
  recordSpareInUse,
  recordStageBehind,
  recordSupplyIncomplete,
  recordTestsBeforeEdition,
  recordTestsContradict,
  recordUnknownEdition,
  ringBridged,
  ringCountDisagrees,
  ringCpcRatio,
  ringEndsAgainstLength,
  ringEndsDiffer,
  ringEndsMissing,
  ringEndsOnRadial,
  ringEndsWorkedBack,
  ringIdenticalReadings,
  ringLegsSwappedBetweenRings,
  ringLinkMissing,
  ringLinksNotCrossed,
  ringLongRing,
  ringOpenConductor,
  ringPointOpen,
  ringPointReading,
  ringPointTwice,
  ringPointsMissing,
  ringPoorContact,
  ringR1r2AgainstRing,
  ringR1r2FromEnds,
  ringRunDetached,
  ringRunNotClosed,
  ringSpurOffSpur,
  ringSpurTooLong,
  ringTooManySpurs,
  surgeConductorTooSmall,
  surgeLeadsTooLong,
  surgeNotStated,
  surgeOmittedWithSafetyService,
  surgeOmittedWithoutReason,
];
