import { useMemo } from "react";
import { Dialog, Heading, Modal, ModalOverlay, Tab, TabList, TabPanel, Tabs } from "react-aria-components";
import { openDialog } from "../../store/actions";
import { useApp } from "../../store/useApp";
import { IconAction } from "../fields/Choice";
import { DataTable } from "../table/DataTable";
import { type TableName, tableNames, tableOf, tableTitles } from "../table/tables";
import { useNotation, useProject, useResults } from "../useProject";

/** Everything of a kind at once, as in a spreadsheet. The shots have their own book below the plan. */
export function TablesDialog() {
  const open = useApp((state) => state.dialog === "tables");
  return (
    <ModalOverlay
      className="overlay"
      isOpen={open}
      onOpenChange={(to) => openDialog(to ? "tables" : null)}
      isDismissable
    >
      <Modal className="modal modal-wide">
        <Dialog className="dialog">
          <Heading slot="title" className="dialog-title">
            Tables
          </Heading>
          <div className="dialog-close">
            <IconAction icon="close" label="Close" onPress={() => openDialog(null)} />
          </div>
          <p className="soft small">
            Type into a cell, Enter or Tab goes on; Shift+arrows or a drag choose a block of cells, Ctrl+D
            fills down, copy and paste work with a spreadsheet. A press on a head sorts what you see.
          </p>
          <Tabs className="tabs">
            <TabList className="tab-list" aria-label="Tables">
              {tableNames.map((name) => (
                <Tab className="tab" id={name} key={name}>
                  {tableTitles[name]}
                </Tab>
              ))}
            </TabList>
            {tableNames.map((name) => (
              <TabPanel className="tab-panel" id={name} key={name}>
                <Table name={name} />
              </TabPanel>
            ))}
          </Tabs>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function Table({ name }: { name: TableName }) {
  const project = useProject((present) => present);
  const results = useResults((present) => present);
  const notation = useNotation();
  const model = useMemo(() => tableOf(name, project, results, notation), [name, project, results, notation]);
  return <DataTable model={model} />;
}
