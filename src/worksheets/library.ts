import creep from '../../templates/creep.json';
import customPoints from '../../templates/custom-points.json';
import fivePoint from '../../templates/five-point.json';
import history from '../../templates/history.json';
import indicatorSimulator from '../../templates/indicator-simulator.json';
import iso376 from '../../templates/iso-376.json';
import receivingInspection from '../../templates/receiving-inspection.json';
import summingBox from '../../templates/summing-box.json';
import system from '../../templates/system.json';
import tenPointForce from '../../templates/ten-point-force.json';
import tenPointTorque from '../../templates/ten-point-torque.json';
import thermal from '../../templates/thermal.json';
import twoPoint from '../../templates/two-point.json';
import { readTemplate, type Template } from './template';

const FILES = [twoPoint, fivePoint, tenPointForce, tenPointTorque, customPoints, iso376, creep, thermal, system, indicatorSimulator, receivingInspection, summingBox, history];

/** The templates of the folder templates/, each read as one from somebody else would be. */
export function builtInTemplates(): readonly Template[] {
  return FILES.map((file) => readTemplate(JSON.stringify(file)));
}
