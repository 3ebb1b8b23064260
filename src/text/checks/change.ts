import type { CHANGE } from '../../core/checks';
import type { Words } from '../words';
import type { TextsOf } from './item-text';

export const changeTexts = (w: Words): TextsOf<typeof CHANGE> => ({
  belts: {
    question: 'Belts and pulleys tight?',
    first: 'Isolate and lock off before a guard comes off.',
    look: `Feel the belt tension at spindle, encoder and screw. Try each ${w.grubScrew} and coupling with its key. The encoder must not rock on its mount.`,
    why: 'Slip between spindle and encoder, or motor and screw, is pitch error that no setting shows.',
    notOk: 'Tighten, then count ten turns again.',
  },
  overload: {
    question: 'Overload protection tried?',
    first: 'Isolate before you touch the drive to the screw.',
    look: 'Look at what gives between motor and screw: shear pin, slipping clutch or torque limit. The pin is the right one, the clutch slips before anything bends, the limit is still as set.',
    why: 'If the carriage meets something solid, this part is meant to give and not the nut, the screw or the tool.',
    notOk: 'Put the proper pin in or set the limit again. A stronger pin protects nothing.',
  },
  'end-float': {
    question: 'Leadscrew end float?',
    first: 'Spindle stopped, drive off.',
    look: 'Set an indicator on the end of the screw. Push and pull the carriage with the nut closed. The thrust bearing must be neither loose nor tight to turn.',
    why: 'End float is lost at every reversal, and is part of the backlash you entered: it can’t be more.',
    notOk: 'Adjust the thrust bearing and measure the backlash again.',
    figure: 'End float',
  },
  backlash: {
    question: 'Backlash as entered?',
    first: 'Spindle stopped; turn the screw by hand with the drive off.',
    look: 'With the nut closed turn the screw one way against an indicator, then back until the carriage moves. Try three places along the bed. Enter the largest.',
    why: 'Run-in and picking up are reckoned from this figure; wear makes it grow.',
    notOk: 'If it has grown, enter the new figure on the machine.',
    figure: 'Largest backlash',
  },
  'stop-time': {
    question: 'Whole stopping time measured?',
    first: 'No work near the tool: dummy runs in air, away from chuck and tailstock.',
    look: 'Ten times, stop the carriage at a mark as you would at the shoulder. Take the longest overrun and divide it by the carriage speed. That is the time from mark to nut clear, not the lever’s throw alone.',
    why: 'The stopping room and the highest speed rest on it. A time measured longer than planned means the plan is too quick.',
    notOk: 'Enter the longer time on the machine, and the speeds follow.',
    figure: 'Longest time, mark to nut clear',
  },
  'ramp-test': {
    question: 'Ramp test done at this lead?',
    first:
      'No work in the chuck, room for the carriage both ways, a hand on the main switch. Never reverse a screw-on chuck that isn’t clamped.',
    look: 'Set the carriage to an indicator mark. Use the fastest start, stop and reverse you have, ten times each, and come back to the mark. Enter the highest speed at which it came back.',
    why: 'A start or stop asks more of the motor than steady running. Lost steps show only as a mark that no longer meets.',
    notOk: 'Go slower until it comes back ten times out of ten.',
    figure: 'Speed up to which it came back',
  },
});
