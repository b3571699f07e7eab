import { ICommandService, type Injector } from '@univerjs/core';
import { DeviceInputEventType } from '@univerjs/engine-render';
import { IEditorBridgeService, SetCellEditVisibleOperation } from '@univerjs/sheets-ui';

/** Takes what is being typed into its cell, as a click on another cell does. Nothing happens if nothing is typed. */
export function finishEditing(injector: Injector): void {
  const bridge = injector.get(IEditorBridgeService);
  const { visible, unitId } = bridge.isVisible();
  if (!visible) return;
  bridge.disableForceKeepVisible();
  injector.get(ICommandService).syncExecuteCommand(SetCellEditVisibleOperation.id, { visible: false, eventType: DeviceInputEventType.PointerDown, unitId });
}
