/** An analysis under the names of the contract, key by key: renaming inside core renames nothing here. */

import type { Analysis } from '../analysis/analyze';
import type { DecayBand } from '../decay/decay';
import type { Finding, Remedy } from '../findings/finding';
import type { ShellMode } from '../modes/shell-modes';
import type { Criterion } from '../proportions/criteria';
import type { Surface } from '../room/space';
import type { LaterResult, SpeakerResult } from '../speakers/judge';
import type { Channel, Layout, Recommendation } from '../speakers/layouts';
import type { PublishedAnalysis } from './contract';

/** What is published of `analysis`. */
export function published(analysis: Analysis): PublishedAnalysis {
  const { air, geometry, decay, layout, listening } = analysis;
  return {
    air: { speedOfSoundMS: air.speedOfSoundMS, densityKgM3: air.densityKgM3 },
    geometry: {
      volumeM3: geometry.volumeM3,
      surfaceM2: geometry.surfaceM2,
      surfaces: geometry.surfaces.map(surfaceOf),
    },
    modes: modesOf(analysis),
    decay: {
      bands: decay.bands.map(bandOf),
      midS: decay.midS,
      advice: {
        method: decay.advice.method,
        ratio: decay.advice.ratio,
        limit: decay.advice.limit,
        hz: decay.advice.hz,
        strongest: decay.advice.strongest,
        weakest: decay.advice.weakest,
        source: decay.advice.source,
      },
      modal: decay.modal.map((mode) => ({
        order: mode.order,
        frequencyHz: mode.frequencyHz,
        decayS: mode.decayS,
        extrapolated: mode.extrapolated,
        bandwidthHz: mode.bandwidthHz,
      })),
    },
    layout: layout && layoutOf(layout),
    listening,
    speakers: analysis.speakers.map(speakerOf),
    later: analysis.later.map(laterOf),
    seats: analysis.seats.map(({ row, seat, position }) => ({ row, seat, position })),
    findings: analysis.findings.map(findingOf),
  };
}

function modesOf({ modes }: Analysis): PublishedAnalysis['modes'] {
  return {
    shell: modes.shell.map(modeOf),
    schroederHz: modes.schroederHz,
    spacing: {
      axialWidestGap: criterionOf(modes.spacing.axialWidestGap),
      axialClosest: criterionOf(modes.spacing.axialClosest),
      axialOverlap: criterionOf(modes.spacing.axialOverlap),
      thirdOctaveDensity: criterionOf(modes.spacing.thirdOctaveDensity),
      coincidentModes: criterionOf(modes.spacing.coincidentModes),
      proportionInequality: criterionOf(modes.spacing.proportionInequality),
      wholeRatios: criterionOf(modes.spacing.wholeRatios),
      proportionArea: criterionOf(modes.spacing.proportionArea),
      goodRatio: criterionOf(modes.spacing.goodRatio),
      smoothness: criterionOf(modes.spacing.smoothness),
      unevenness: criterionOf(modes.spacing.unevenness),
    },
    gaps: modes.gaps.map(({ fromHz, toHz, widthHz }) => ({ fromHz, toHz, widthHz })),
    pileUps: modes.pileUps.map((pileUp) => ({
      modes: pileUp.modes.map(modeOf),
      lowHz: pileUp.lowHz,
      highHz: pileUp.highHz,
      closestHz: pileUp.closestHz,
    })),
    thirdOctaves: modes.thirdOctaves.map((band) => ({
      nominalHz: band.nominalHz,
      exactHz: band.exactHz,
      lowHz: band.lowHz,
      highHz: band.highHz,
      count: band.count,
      byKind: {
        axial: band.byKind.axial,
        tangential: band.byKind.tangential,
        oblique: band.byKind.oblique,
      },
    })),
    expectedCount: modes.expectedCount,
    exactShape: modes.exactShape,
    ...(modes.shaped && {
      shaped: modes.shaped.map((mode) => ({
        frequencyHz: mode.frequencyHz,
        likeShell: mode.likeShell,
        shiftHz: mode.shiftHz,
        errorPercent: mode.errorPercent,
      })),
    }),
    ...(modes.shapedErrorPercent !== undefined && {
      shapedErrorPercent: modes.shapedErrorPercent,
    }),
  };
}

const modeOf = ({ frequencyHz, order, kind }: ShellMode) => ({ frequencyHz, order, kind });

const criterionOf = (criterion: Criterion) => ({
  title: criterion.title,
  value: criterion.value,
  limit: criterion.limit,
  pass: criterion.pass,
  unit: criterion.unit,
  says: criterion.says,
  source: criterion.source,
  validity: criterion.validity,
});

const surfaceOf = ({ face, finish, patch, areaM2 }: Surface) => ({ face, finish, patch, areaM2 });

const bandOf = (band: DecayBand) => ({
  hz: band.hz,
  sabineS: band.sabineS,
  eyringS: band.eyringS,
  targetS: band.targetS,
  lowS: band.lowS,
  highS: band.highS,
  methods: {
    sabine: band.methods.sabine,
    eyring: band.methods.eyring,
    millington: band.methods.millington,
    fitzroy: band.methods.fitzroy,
    arauPuchades: band.methods.arauPuchades,
    kuttruffPaths: band.methods.kuttruffPaths,
    kuttruffUneven: band.methods.kuttruffUneven,
  },
  spreadS: band.spreadS,
  coefficientBandS: band.coefficientBandS,
  absorptionM2: band.absorptionM2,
  objectsM2: band.objectsM2,
  airAbsorptionM2: band.airAbsorptionM2,
  meanCoefficient: band.meanCoefficient,
  surfaces: band.surfaces.map((surface) => ({
    ...surfaceOf(surface),
    coefficient: surface.coefficient,
  })),
  objects: band.objects.map(({ id, item, count, areaM2 }) => ({ id, item, count, areaM2 })),
  pairs: band.pairs.map(({ axis, areaM2, meanCoefficient, exponent }) => ({
    axis,
    areaM2,
    meanCoefficient,
    exponent,
  })),
});

const layoutOf = (layout: Layout) => ({
  id: layout.id,
  tradeName: layout.tradeName,
  source: layout.source,
  channels: layout.channels.map(channelOf),
  recommendation: recommendationOf(layout.recommendation),
  recommendations: layout.recommendations.map(recommendationOf),
});

const channelOf = (channel: Channel) => ({
  label: channel.label,
  name: channel.name,
  short: channel.short,
  azimuth: channel.azimuth,
  nominalAzimuth: channel.nominalAzimuth,
  elevation: channel.elevation,
});

const recommendationOf = ({ id, title, source, howKnown, note }: Recommendation) => ({
  id,
  title,
  source,
  howKnown,
  ...(note !== undefined && { note }),
});

const speakerOf = (speaker: SpeakerResult) => ({
  channel: speaker.channel,
  position: speaker.position,
  azimuthDeg: speaker.azimuthDeg,
  elevationDeg: speaker.elevationDeg,
  distanceM: speaker.distanceM,
  delayMs: speaker.delayMs,
  levelDb: speaker.levelDb,
  azimuthOffDeg: speaker.azimuthOffDeg,
  elevationOffDeg: speaker.elevationOffDeg,
  inRange: speaker.inRange,
});

const laterOf = (speaker: LaterResult) => ({
  channel: speaker.channel,
  name: speaker.name,
  short: speaker.short,
  position: speaker.position,
  azimuthDeg: speaker.azimuthDeg,
  elevationDeg: speaker.elevationDeg,
  distanceM: speaker.distanceM,
  inRange: speaker.inRange,
});

const findingOf = (finding: Finding) => ({
  id: finding.id,
  severity: finding.severity,
  subject: finding.subject,
  where: finding.where,
  message: finding.message,
  figureName: finding.figureName,
  value: finding.value,
  limit: finding.limit,
  unit: finding.unit,
  source: finding.source,
  ...(finding.caution !== undefined && { caution: finding.caution }),
  ...(finding.place && { place: finding.place }),
  remedies: finding.remedies.map(remedyOf),
});

const remedyOf = ({ text, edit, opens }: Remedy) => ({
  text,
  ...(edit && { edit: { ...edit } }),
  ...(opens && { opens }),
});
